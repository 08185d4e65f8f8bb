namespace OnboardHeat.History.Blocks;

/// <summary>
/// A column that seldom changes (a fault, a signal, whether the clock is trusted): each value with how often it
/// repeats.
/// </summary>
internal static class RunColumn
{
    public static void Write(PayloadWriter writer, ReadOnlySpan<long> values)
    {
        for (var i = 0; i < values.Length;)
        {
            var end = i + 1;
            while (end < values.Length && values[end] == values[i])
            {
                end++;
            }

            writer.Signed(values[i]);
            writer.Unsigned((ulong)(end - i));
            i = end;
        }
    }

    public static void Read(ref PayloadReader reader, Span<long> into)
    {
        for (var i = 0; i < into.Length;)
        {
            var value = reader.Signed();
            var count = reader.Count(into.Length - i);
            if (count == 0)
            {
                throw new InvalidDataException("A run of no values in a block.");
            }

            into.Slice(i, count).Fill(value);
            i += count;
        }
    }
}
