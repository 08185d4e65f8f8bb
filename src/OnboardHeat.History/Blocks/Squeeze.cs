using System.IO.Compression;

namespace OnboardHeat.History.Blocks;

/// <summary>Makes a payload small. The first byte says how, so that a better way can come later.</summary>
internal static class Squeeze
{
    private const byte Plain = 0;
    private const byte Brotli = 1;

    /// <summary>Highest quality, for what is large: an hour's block is packed once and read for years.</summary>
    private const int BestQuality = 11;

    /// <summary>
    /// For what is small and soon packed again: the highest takes milliseconds to begin, whatever the length.
    /// </summary>
    private const int QuickQuality = 5;

    /// <summary>From so many bytes on the best quality pays.</summary>
    private const int LargeBytes = 4096;

    /// <summary>Window of 2^18 bytes: more than an hour's block before it is squeezed, and little memory.</summary>
    private const int WindowBits = 18;

    /// <summary>No payload is ever so large; a damaged length must not take all memory.</summary>
    private const int LimitBytes = 16 << 20;

    public static byte[] Press(ReadOnlySpan<byte> payload)
    {
        var pressed = new byte[BrotliEncoder.GetMaxCompressedLength(payload.Length) + 16];
        var head = new PayloadWriter();
        head.Byte(Brotli);
        head.Unsigned((ulong)payload.Length);
        head.Written.CopyTo(pressed);
        if (BrotliEncoder.TryCompress(payload, pressed.AsSpan(head.Length), out var written, payload.Length < LargeBytes
            ? QuickQuality : BestQuality, WindowBits)
            && head.Length + written <= payload.Length)
        {
            return pressed.AsSpan(0, head.Length + written).ToArray();
        }

        var plain = new byte[payload.Length + 1];
        plain[0] = Plain;
        payload.CopyTo(plain.AsSpan(1));
        return plain;
    }

    public static byte[] Release(ReadOnlySpan<byte> pressed)
    {
        var reader = new PayloadReader(pressed);
        var how = reader.Byte();
        if (how == Plain)
        {
            return pressed[1..].ToArray();
        }

        var payload = new byte[reader.Count(LimitBytes)];
        return how == Brotli && BrotliDecoder.TryDecompress(pressed[reader.Position..], payload, out var written)
            && written == payload.Length
            ? payload
            : throw new InvalidDataException("A block's payload cannot be unpacked.");
    }
}
