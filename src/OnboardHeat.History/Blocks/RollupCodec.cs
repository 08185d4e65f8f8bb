namespace OnboardHeat.History.Blocks;

/// <summary>
/// Spans to the payload of a block and back; figures to the ten-thousandth, which is finer than any line of a chart.
/// </summary>
internal static class RollupCodec
{
    private const double Scale = 10_000;

    public static byte[] Encode(IReadOnlyList<RollupSpan> spans)
    {
        var writer = new PayloadWriter();
        var used = Enumerable.Range(0, RollupSpan.Columns)
            .Where(column => spans.Any(span => span.Count(column) > 0)).ToArray();
        writer.Unsigned((ulong)used.Length);
        foreach (var column in used)
        {
            writer.Unsigned((ulong)column);
        }

        var before = 0L;
        foreach (var span in spans)
        {
            var index = span.Start.Ticks / RollupSpan.Length.Ticks;
            writer.Signed(index - before);
            before = index;
        }

        foreach (var column in used)
        {
            var last = 0L;
            foreach (var span in spans)
            {
                writer.Unsigned((ulong)span.Count(column));
                if (span.Count(column) > 0)
                {
                    var min = (long)Math.Floor(span.Min(column) * Scale);
                    var mean = (long)Math.Round(span.Mean(column) * Scale);
                    writer.Signed(min - last);
                    writer.Signed(mean - min);
                    writer.Signed((long)Math.Ceiling(span.Max(column) * Scale) - mean);
                    last = mean;
                }
            }
        }

        return Squeeze.Press(writer.Written);
    }

    public static IReadOnlyList<RollupSpan> Decode(in BlockHeader header, ReadOnlySpan<byte> payload)
    {
        var reader = new PayloadReader(Squeeze.Release(payload));
        var used = new int[reader.Count(1000)];
        for (var i = 0; i < used.Length; i++)
        {
            used[i] = reader.Count(1000);
        }

        var spans = new RollupSpan[header.Count];
        var index = 0L;
        for (var i = 0; i < spans.Length; i++)
        {
            index += reader.Signed();
            spans[i] = new RollupSpan(new TimeSpan(index * RollupSpan.Length.Ticks));
        }

        foreach (var column in used)
        {
            var last = 0L;
            foreach (var span in spans)
            {
                var count = (int)reader.Unsigned();
                if (count == 0)
                {
                    continue;
                }

                var min = last + reader.Signed();
                var mean = min + reader.Signed();
                last = mean;
                var max = mean + reader.Signed();
                if (column < RollupSpan.Columns)
                {
                    span.Add(column, count, min / Scale, mean / Scale, max / Scale);
                }
            }
        }

        return spans;
    }
}
