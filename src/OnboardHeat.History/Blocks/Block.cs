using System.Buffers.Binary;
using System.Numerics;

namespace OnboardHeat.History.Blocks;

/// <summary>
/// One block as it is stored: magic, version, header, payload, and a CRC-32C over all of it. The engine's pages carry
/// no checksum, and what it reads from a damaged page looks like any other document; so nothing is believed whose
/// checksum does not fit.
/// </summary>
internal static class Block
{
    /// <summary>Version of the format; a newer one is left alone.</summary>
    public const byte Version = 1;

    private const int CrcBytes = 4;

    private static ReadOnlySpan<byte> Magic => "OHRB"u8;

    /// <summary>Puts a block together.</summary>
    public static byte[] Seal(in BlockHeader header, ReadOnlySpan<byte> payload)
    {
        var writer = new PayloadWriter();
        writer.Bytes(Magic);
        writer.Byte(Version);
        writer.Byte((byte)header.Kind);
        writer.Unsigned((ulong)header.Run);
        writer.Unsigned((ulong)header.FirstNumber);
        writer.Unsigned((ulong)(header.LastNumber - header.FirstNumber));
        writer.Unsigned((ulong)header.First.Ticks);
        writer.Unsigned((ulong)(header.Last - header.First).Ticks);
        writer.Unsigned((ulong)header.Count);
        writer.Unsigned((ulong)header.FirstEntry);
        writer.Byte((byte)header.Anchor.Quality);
        if (header.Anchor.Quality != AnchorQuality.None)
        {
            writer.Signed((header.Anchor.Elapsed - header.First).Ticks);
            writer.Unsigned((ulong)header.Anchor.UtcTicks);
        }

        writer.Unsigned((ulong)payload.Length);
        writer.Bytes(payload);
        var sealedBlock = new byte[writer.Length + CrcBytes];
        writer.Written.CopyTo(sealedBlock);
        BinaryPrimitives.WriteUInt32LittleEndian(sealedBlock.AsSpan(writer.Length), Crc32C(writer.Written));
        return sealedBlock;
    }

    /// <summary>Reads a block; false when it is not one, is damaged, or is of a newer version.</summary>
    public static bool TryOpen(byte[]? stored, out BlockHeader header, out ReadOnlyMemory<byte> payload)
    {
        header = default;
        payload = default;
        if (stored is null || stored.Length < Magic.Length + 2 + CrcBytes || !stored.AsSpan().StartsWith(Magic)
            || stored[Magic.Length] != Version)
        {
            return false;
        }

        var body = stored.AsSpan(0, stored.Length - CrcBytes);
        if (BinaryPrimitives.ReadUInt32LittleEndian(stored.AsSpan(body.Length)) != Crc32C(body))
        {
            return false;
        }

        var reader = new PayloadReader(body[(Magic.Length + 1)..]);
        header = ReadHeader(ref reader);
        var length = reader.Count(body.Length);
        payload = stored.AsMemory(Magic.Length + 1 + reader.Position, length);
        return true;
    }

    /// <summary>CRC-32C (Castagnoli), as RFC 3720 appendix B.4 gives it.</summary>
    public static uint Crc32C(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        while (bytes.Length >= sizeof(ulong))
        {
            crc = BitOperations.Crc32C(crc, BinaryPrimitives.ReadUInt64LittleEndian(bytes));
            bytes = bytes[sizeof(ulong)..];
        }

        foreach (var piece in bytes)
        {
            crc = BitOperations.Crc32C(crc, piece);
        }

        return ~crc;
    }

    private static BlockHeader ReadHeader(ref PayloadReader reader)
    {
        var kind = (BlockKind)reader.Byte();
        var run = (int)reader.Unsigned();
        var firstNumber = (long)reader.Unsigned();
        var lastNumber = firstNumber + (long)reader.Unsigned();
        var first = new TimeSpan((long)reader.Unsigned());
        var last = first + new TimeSpan((long)reader.Unsigned());
        var count = (int)reader.Unsigned();
        var firstEntry = (long)reader.Unsigned();
        var quality = (AnchorQuality)reader.Byte();
        var anchor = quality == AnchorQuality.None
            ? default
            : new TimeAnchor(quality, first + new TimeSpan(reader.Signed()), (long)reader.Unsigned());
        return new BlockHeader(kind, run, firstNumber, lastNumber, first, last, count, firstEntry, anchor);
    }
}
