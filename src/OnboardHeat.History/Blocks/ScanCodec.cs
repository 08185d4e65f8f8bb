using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.History.Blocks;

/// <summary>
/// Scans to the payload of a block and back, column by column, exactly: values, faults, signals, labels, actions,
/// reports.
/// </summary>
internal static class ScanCodec
{
    /// <summary>No block holds more scans; a damaged count must not take all memory.</summary>
    public const int MostScans = 100_000;

    public static byte[] Encode(IReadOnlyList<Scan> scans)
    {
        var writer = new PayloadWriter();
        var column = new long[scans.Count];
        StepColumn.Write(writer, Fill(column, scans, static scan => scan.Elapsed.Ticks));
        WriteLabels(writer, scans, column);
        foreach (var signal in Signals.All)
        {
            RunColumn.Write(writer, Fill(column, scans, scan => scan[signal] is { } level ? (level ? 1 : 0) : -1));
        }

        foreach (var channel in Channels.All)
        {
            RunColumn.Write(writer, Fill(column, scans, scan => (long)scan[channel].Fault));
            DecimalColumn.Write(writer, Values(scans, channel));
        }

        WriteRare(writer, scans);
        return Squeeze.Press(writer.Written);
    }

    public static IReadOnlyList<Scan> Decode(in BlockHeader header, ReadOnlySpan<byte> payload)
    {
        if (header.Count is < 0 or > MostScans)
        {
            throw new InvalidDataException("A block claims too many scans.");
        }

        var reader = new PayloadReader(Squeeze.Release(payload));
        var scans = new Scan[header.Count];
        var column = new long[scans.Length];
        StepColumn.Read(ref reader, column);
        for (var i = 0; i < scans.Length; i++)
        {
            scans[i] = new Scan { Run = header.Run, Elapsed = new TimeSpan(column[i]) };
        }

        ReadLabels(ref reader, scans, column);
        foreach (var signal in Signals.All)
        {
            RunColumn.Read(ref reader, column);
            for (var i = 0; i < scans.Length; i++)
            {
                scans[i][signal] = column[i] < 0 ? null : column[i] != 0;
            }
        }

        foreach (var channel in Channels.All)
        {
            ReadChannel(ref reader, scans, channel, column);
        }

        ReadRare(ref reader, scans);
        return scans;
    }

    private static long[] Fill(long[] column, IReadOnlyList<Scan> scans, Func<Scan, long> of)
    {
        for (var i = 0; i < column.Length; i++)
        {
            column[i] = of(scans[i]);
        }

        return column;
    }

    private static double[] Values(IReadOnlyList<Scan> scans, Channel channel)
    {
        var values = new List<double>(scans.Count);
        foreach (var scan in scans)
        {
            if (scan[channel].HasValue)
            {
                values.Add(scan[channel].Value);
            }
        }

        return [.. values];
    }

    private static void ReadChannel(ref PayloadReader reader, Scan[] scans, Channel channel, long[] faults)
    {
        RunColumn.Read(ref reader, faults);
        var values = new double[faults.Count(fault => fault == (long)ReadingFault.None)];
        DecimalColumn.Read(ref reader, values);
        for (int i = 0, next = 0; i < scans.Length; i++)
        {
            var fault = (ReadingFault)faults[i];
            scans[i][channel] = fault == ReadingFault.None ? new Reading(values[next++], fault) : Reading.Failed(fault);
        }
    }

    /// <summary>
    /// Labels as their distance from elapsed time, which hardly moves: a clock step shows as one step.
    /// </summary>
    private static void WriteLabels(PayloadWriter writer, IReadOnlyList<Scan> scans, long[] column)
    {
        RunColumn.Write(writer,
            Fill(column, scans, static scan => (scan.Utc is null ? 0 : 1) | (scan.IsUtcTrusted ? 2 : 0)));
        RunColumn.Write(writer, Fill(column, scans, static scan => (long)(scan.Utc?.Offset.TotalMinutes ?? 0)));
        var last = 0L;
        StepColumn.Write(writer,
            Fill(column, scans, scan => last = scan.Utc is { } utc ? utc.UtcTicks - scan.Elapsed.Ticks : last));
    }

    private static void ReadLabels(ref PayloadReader reader, Scan[] scans, long[] column)
    {
        var flags = new long[scans.Length];
        var offsets = new long[scans.Length];
        RunColumn.Read(ref reader, flags);
        RunColumn.Read(ref reader, offsets);
        StepColumn.Read(ref reader, column);
        for (var i = 0; i < scans.Length; i++)
        {
            scans[i].IsUtcTrusted = (flags[i] & 2) != 0;
            if ((flags[i] & 1) != 0)
            {
                var offset = TimeSpan.FromMinutes(offsets[i]);
                scans[i].Utc = new DateTimeOffset(column[i] + scans[i].Elapsed.Ticks + offset.Ticks, offset);
            }
        }
    }

    /// <summary>
    /// Actions of people, and changes of how the house fares: rare, so each is written with its place.
    /// </summary>
    private static void WriteRare(PayloadWriter writer, IReadOnlyList<Scan> scans)
    {
        var acted = Enumerable.Range(0, scans.Count).Where(i => scans[i].Actions.Count > 0).ToArray();
        writer.Unsigned((ulong)acted.Length);
        foreach (var i in acted)
        {
            writer.Unsigned((ulong)i);
            writer.Unsigned((ulong)scans[i].Actions.Count);
            foreach (var action in scans[i].Actions)
            {
                writer.Byte((byte)action.Kind);
                writer.Text(action.Target);
                writer.Text(action.Text);
            }
        }

        var told = Enumerable.Range(0, scans.Count)
            .Where(i => scans[i].House != (i == 0 ? HouseReport.Well : scans[i - 1].House)).ToArray();
        writer.Unsigned((ulong)told.Length);
        foreach (var i in told)
        {
            writer.Unsigned((ulong)i);
            writer.Text(scans[i].House.HistoryStopped);
            writer.Text(scans[i].House.HistoryDamaged);
            var hasSelfTest = scans[i].House.SelfTestFailed.Length > 0;
            writer.Byte((byte)((scans[i].House.IsPowerLow ? 1 : 0) | (hasSelfTest ? 2 : 0)));
            if (hasSelfTest)
            {
                writer.Text(scans[i].House.SelfTestFailed);
            }
        }
    }

    private static void ReadRare(ref PayloadReader reader, Scan[] scans)
    {
        for (var left = reader.Count(scans.Length); left > 0; left--)
        {
            var at = reader.Count(scans.Length - 1);
            var actions = new PersonAction[reader.Count(1000)];
            foreach (ref var action in actions.AsSpan())
            {
                action = new PersonAction((ActionKind)reader.Byte(), reader.Text(), reader.Text());
            }

            scans[at].Actions = actions;
        }

        for (var left = reader.Count(scans.Length); left > 0; left--)
        {
            var at = reader.Count(scans.Length - 1);
            var (stopped, damaged, flags) = (reader.Text(), reader.Text(), reader.Byte());
            var house = new HouseReport(stopped, damaged, (flags & 1) != 0) { SelfTestFailed = (flags & 2) != 0
                ? reader.Text() : "" };
            for (var i = at; i < scans.Length; i++)
            {
                scans[i].House = house;
            }
        }
    }
}
