using OnboardHeat.Core.Scans;

namespace OnboardHeat.History.Blocks;

/// <summary>Rolls scans and figures up into spans.</summary>
internal static class Rollups
{
    public static IReadOnlyList<RollupSpan> Of(IEnumerable<Scan> scans, IEnumerable<Entry> entries)
    {
        var spans = new SortedDictionary<long, RollupSpan>();
        foreach (var scan in scans)
        {
            var span = SpanAt(spans, scan.Elapsed);
            foreach (var channel in Channels.All)
            {
                if (scan[channel].HasValue)
                {
                    span.Add((int)channel, scan[channel].Value);
                }
            }
        }

        foreach (var entry in entries)
        {
            for (var i = 0; i < (entry.Figures?.Count ?? 0); i++)
            {
                if (entry.Figures![i] is { } value)
                {
                    SpanAt(spans, entry.Elapsed).Add(Channels.Count + i, value);
                }
            }
        }

        return [.. spans.Values];
    }

    private static RollupSpan SpanAt(SortedDictionary<long, RollupSpan> spans, TimeSpan elapsed)
    {
        var index = elapsed.Ticks / RollupSpan.Length.Ticks;
        if (!spans.TryGetValue(index, out var span))
        {
            spans[index] = span = new RollupSpan(new TimeSpan(index * RollupSpan.Length.Ticks));
        }

        return span;
    }
}
