using OnboardHeat.Engine.Ports;

namespace OnboardHeat.History.Blocks;

/// <summary>Entries, and where the receivers stand, to the payload of a block and back.</summary>
internal static class EntryCodec
{
    private const byte Event = 0;
    private const byte Figures = 1;

    /// <summary>Figures are estimates: the fourth decimal says nothing more.</summary>
    private const double FigureScale = 10_000;

    /// <summary>No figure of a van comes near it; what does is not known.</summary>
    private const double Limit = 1e12;

    public static byte[] Encode(IReadOnlyList<Entry> entries, IReadOnlyDictionary<string, long> cursors)
    {
        var writer = new PayloadWriter();
        var before = TimeSpan.Zero;
        var last = new long[FigureNames.All.Count];
        foreach (var entry in entries)
        {
            writer.Signed((entry.Elapsed - before).Ticks);
            before = entry.Elapsed;
            if (entry.Event is { } happened)
            {
                writer.Byte(Event);
                writer.Text(happened.Kind);
                writer.Text(happened.Name);
                writer.Text(happened.State);
                writer.Text(happened.Text);
                continue;
            }

            writer.Byte(Figures);
            WriteFigures(writer, entry.Figures!, last);
        }

        writer.Unsigned((ulong)cursors.Count);
        foreach (var (receiver, number) in cursors)
        {
            writer.Text(receiver);
            writer.Unsigned((ulong)number);
        }

        return Squeeze.Press(writer.Written);
    }

    public static IReadOnlyList<Entry> Decode(in BlockHeader header, ReadOnlySpan<byte> payload,
        out IReadOnlyDictionary<string, long> cursors)
    {
        var reader = new PayloadReader(Squeeze.Release(payload));
        var entries = new List<Entry>();
        var elapsed = TimeSpan.Zero;
        var last = new long[FigureNames.All.Count];
        for (var i = 0; i < header.Count; i++)
        {
            elapsed += new TimeSpan(reader.Signed());
            entries.Add(reader.Byte() == Event
                ? new Entry(elapsed, new RecordedEvent(header.Run, elapsed, null, reader.Text(), reader.Text(),
                    reader.Text(), reader.Text()), null)
                : new Entry(elapsed, null, ReadFigures(ref reader, last)));
        }

        var found = new Dictionary<string, long>();
        for (var left = reader.Count(1000); left > 0; left--)
        {
            found[reader.Text()] = (long)reader.Unsigned();
        }

        cursors = found;
        return entries;
    }

    /// <summary>A bit for each known figure, then how far each has moved since it was last known.</summary>
    private static void WriteFigures(PayloadWriter writer, IReadOnlyList<double?> figures, long[] last)
    {
        var known = 0UL;
        for (var i = 0; i < figures.Count; i++)
        {
            known |= figures[i] is { } value && Math.Abs(value) < Limit ? 1UL << i : 0;
        }

        writer.Unsigned(known);
        for (var i = 0; i < figures.Count; i++)
        {
            if ((known & (1UL << i)) != 0)
            {
                var value = (long)Math.Round(figures[i]!.Value * FigureScale);
                writer.Signed(value - last[i]);
                last[i] = value;
            }
        }
    }

    private static double?[] ReadFigures(ref PayloadReader reader, long[] last)
    {
        var values = new double?[last.Length];
        var known = reader.Unsigned();
        for (var i = 0; i < values.Length; i++)
        {
            if ((known & (1UL << i)) != 0)
            {
                last[i] += reader.Signed();
                values[i] = last[i] / FigureScale;
            }
        }

        return values;
    }
}
