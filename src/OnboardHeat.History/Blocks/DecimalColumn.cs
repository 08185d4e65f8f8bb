namespace OnboardHeat.History.Blocks;

/// <summary>
/// A column of temperatures, exact to the last bit. Each value is the nearest ten-thousandth (a sixteenth of a kelvin,
/// the step of the probes, is 625 of them; what other loggers write with up to four decimals fits as well) plus how
/// many representable numbers it lies beside it, which is nearly always none. The steps from value to value have a
/// common divisor (625), so they become small whole numbers.
/// </summary>
internal static class DecimalColumn
{
    private const double PerUnit = 10_000;

    /// <summary>Beyond this a value is stored by its bits alone; no temperature comes near it.</summary>
    private const double Limit = 1e10;

    public static void Write(PayloadWriter writer, ReadOnlySpan<double> values)
    {
        var whole = new long[values.Length];
        var divisor = 0L;
        var hasBeside = false;
        for (var i = 0; i < values.Length; i++)
        {
            whole[i] = Math.Abs(values[i]) < Limit ? (long)Math.Round(values[i] * PerUnit) : 0;
            hasBeside |= Beside(values[i], whole[i]) != 0;
            if (i > 0)
            {
                divisor = CommonDivisor(divisor, Math.Abs(whole[i] - whole[i - 1]));
            }
        }

        divisor = Math.Max(divisor, 1);
        writer.Unsigned((ulong)divisor);
        writer.Byte((byte)(hasBeside ? 1 : 0));
        for (var i = 0; i < values.Length; i++)
        {
            writer.Signed(i == 0 ? whole[0] : (whole[i] - whole[i - 1]) / divisor);
        }

        for (var i = 0; hasBeside && i < values.Length; i++)
        {
            writer.Signed(Beside(values[i], whole[i]));
        }
    }

    public static void Read(ref PayloadReader reader, Span<double> into)
    {
        var divisor = (long)reader.Unsigned();
        var hasBeside = reader.Byte() != 0;
        var whole = 0L;
        for (var i = 0; i < into.Length; i++)
        {
            whole = i == 0 ? reader.Signed() : whole + (reader.Signed() * divisor);
            into[i] = whole / PerUnit;
        }

        for (var i = 0; hasBeside && i < into.Length; i++)
        {
            into[i] = BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(into[i]) + reader.Signed());
        }
    }

    private static long CommonDivisor(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    private static long Beside(double value, long whole) =>
        unchecked(BitConverter.DoubleToInt64Bits(value) - BitConverter.DoubleToInt64Bits(whole / PerUnit));
}
