namespace OnboardHeat.History.Blocks;

/// <summary>
/// A column of times in ticks whose steps hardly change: the change of the step is stored, in milliseconds where that
/// is exact.
/// </summary>
internal static class StepColumn
{
    public static void Write(PayloadWriter writer, ReadOnlySpan<long> ticks)
    {
        var unit = TimeSpan.TicksPerMillisecond;
        foreach (var value in ticks)
        {
            if (value % unit != 0)
            {
                unit = 1;
            }
        }

        writer.Unsigned((ulong)unit);
        var before = 0L;
        var step = 0L;
        foreach (var value in ticks)
        {
            writer.Signed((value - before - step) / unit);
            step = value - before;
            before = value;
        }
    }

    public static void Read(ref PayloadReader reader, Span<long> into)
    {
        var unit = (long)reader.Unsigned();
        var before = 0L;
        var step = 0L;
        foreach (ref var value in into)
        {
            step += reader.Signed() * unit;
            before += step;
            value = before;
        }
    }
}
