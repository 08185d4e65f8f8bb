using OnboardHeat.Engine.Ports;

namespace OnboardHeat.History.Blocks;

/// <summary>Entries, and where the receivers stand, to the payload of a block and back.</summary>
internal static class EntryCodec
{
    private const byte Event = 0;
    private const byte Figures = 1;

    /// <summary>Figures are estimates: the fourth decimal says nothing more.</summary>
    private const double FigureScale = 10_000;

    private const long Unknown = long.MinValue >> 1;

    public static byte[] Encode(IReadOnlyList<Entry> entries, IReadOnlyDictionary<string, long> cursors)
    {
        var writer = new PayloadWriter();
        var before = TimeSpan.Zero;
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
            writer.Unsigned((ulong)entry.Figures!.Count);
            foreach (var value in entry.Figures)
            {
                writer.Signed(value is { } known && Math.Abs(known) < 1e12 ? (long)Math.Round(known * FigureScale) : Unknown);
            }
        }

        writer.Unsigned((ulong)cursors.Count);
        foreach (var (receiver, number) in cursors)
        {
            writer.Text(receiver);
            writer.Unsigned((ulong)number);
        }

        return Squeeze.Press(writer.Written);
    }

    public static IReadOnlyList<Entry> Decode(in BlockHeader header, ReadOnlySpan<byte> payload, out IReadOnlyDictionary<string, long> cursors)
    {
        var reader = new PayloadReader(Squeeze.Release(payload));
        var entries = new List<Entry>();
        var elapsed = TimeSpan.Zero;
        for (var i = 0; i < header.Count; i++)
        {
            elapsed += new TimeSpan(reader.Signed());
            entries.Add(reader.Byte() == Event
                ? new Entry(elapsed, new RecordedEvent(header.Run, elapsed, null, reader.Text(), reader.Text(), reader.Text(), reader.Text()), null)
                : new Entry(elapsed, null, ReadFigures(ref reader)));
        }

        var found = new Dictionary<string, long>();
        for (var left = reader.Count(1000); left > 0; left--)
        {
            found[reader.Text()] = (long)reader.Unsigned();
        }

        cursors = found;
        return entries;
    }

    private static double?[] ReadFigures(ref PayloadReader reader)
    {
        var values = new double?[FigureNames.All.Count];
        var stored = reader.Count(1000);
        for (var i = 0; i < stored; i++)
        {
            var value = reader.Signed();
            if (i < values.Length)
            {
                values[i] = value == Unknown ? null : value / FigureScale;
            }
        }

        return values;
    }
}
