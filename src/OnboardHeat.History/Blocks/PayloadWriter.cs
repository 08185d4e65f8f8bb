using System.Text;

namespace OnboardHeat.History.Blocks;

/// <summary>Writes the inside of a block: small numbers small.</summary>
internal sealed class PayloadWriter
{
    private byte[] _bytes = new byte[256];

    public int Length { get; private set; }

    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, Length);

    public void Byte(byte value)
    {
        Grow(1);
        _bytes[Length++] = value;
    }

    /// <summary>Seven bits a byte, lowest first, the top bit set while more follow.</summary>
    public void Unsigned(ulong value)
    {
        Grow(10);
        while (value >= 0x80)
        {
            _bytes[Length++] = (byte)(value | 0x80);
            value >>= 7;
        }

        _bytes[Length++] = (byte)value;
    }

    /// <summary>A number of either sign: 0, -1, 1, -2 become 0, 1, 2, 3.</summary>
    public void Signed(long value) => Unsigned((ulong)((value << 1) ^ (value >> 63)));

    public void Text(string value)
    {
        var bytes = Encoding.UTF8.GetBytes(value);
        Unsigned((ulong)bytes.Length);
        Bytes(bytes);
    }

    public void Bytes(ReadOnlySpan<byte> value)
    {
        Grow(value.Length);
        value.CopyTo(_bytes.AsSpan(Length));
        Length += value.Length;
    }

    private void Grow(int more)
    {
        if (Length + more > _bytes.Length)
        {
            Array.Resize(ref _bytes, Math.Max(_bytes.Length * 2, Length + more));
        }
    }
}
