using System.Text;

namespace OnboardHeat.History.Blocks;

/// <summary>
/// Reads what <see cref="PayloadWriter"/> wrote; anything else is an <see cref="InvalidDataException"/>.
/// </summary>
internal ref struct PayloadReader(ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> _bytes = bytes;

    public int Position { get; private set; }

    public byte Byte() => Position < _bytes.Length
        ? _bytes[Position++]
        : throw new InvalidDataException("A block ends too soon.");

    public ulong Unsigned()
    {
        var value = 0UL;
        for (var shift = 0; shift < 70; shift += 7)
        {
            var piece = Byte();
            value |= (ulong)(piece & 0x7F) << shift;
            if (piece < 0x80)
            {
                return value;
            }
        }

        throw new InvalidDataException("A number in a block has no end.");
    }

    public long Signed()
    {
        var value = Unsigned();
        return (long)(value >> 1) ^ -(long)(value & 1);
    }

    /// <summary>A count or length, which can never be more than what a block holds.</summary>
    public int Count(int limit)
    {
        var value = Unsigned();
        return value <= (ulong)limit ? (int)value
            : throw new InvalidDataException("A count in a block is out of range.");
    }

    public string Text() => Encoding.UTF8.GetString(Bytes(Count(_bytes.Length)));

    public ReadOnlySpan<byte> Bytes(int count)
    {
        if (count > _bytes.Length - Position)
        {
            throw new InvalidDataException("A block ends too soon.");
        }

        var taken = _bytes.Slice(Position, count);
        Position += count;
        return taken;
    }
}
