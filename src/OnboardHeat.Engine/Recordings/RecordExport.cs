using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Recordings;

/// <summary>
/// Writes a part of the record as a recorded drive. What the Monitor was given is written to the last digit, so a
/// replay of whole runs from the first on raises the same alarms at the same elapsed times. A run that had no trusted
/// clock has no dates in it.
/// </summary>
public sealed class RecordExport(IRecordReader record, FittedSet fitted)
{
    private readonly Dictionary<int, RecordedRun> _runs = [];

    /// <summary>How many scans were written.</summary>
    public long Scans { get; private set; }

    /// <summary>The runs that were written, in their order.</summary>
    public List<int> Runs { get; } = [];

    /// <summary>Writes it; text goes out in small pieces as the record is read.</summary>
    public async Task WriteAsync(RecordSpan span, Stream to, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(span);
        foreach (var run in await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false))
        {
            _runs[run.Run] = run;
        }

        var columns = await ColumnsAsync(span, cancellationToken).ConfigureAwait(false);
        await using var text = new StreamWriter(to, bufferSize: 32_768, leaveOpen: true) { NewLine = "\n" };
        var writer = new DriveWriter(text, columns);
        await foreach (var scan in ReadAsync(span, cancellationToken).ConfigureAwait(false))
        {
            writer.Write(scan, DateOf(scan));
            Scans++;
            if (Runs.Count == 0 || Runs[^1] != scan.Run)
            {
                Runs.Add(scan.Run);
            }
        }
    }

    /// <summary>
    /// What is fitted by the configuration, and whatever else has readings in this part: the van may have had other
    /// probes then. What is fitted and never answered has a column too, or the replay would not miss it.
    /// </summary>
    private async Task<FittedSet> ColumnsAsync(RecordSpan span, CancellationToken cancellationToken)
    {
        var channels = new bool[Channels.Count];
        var signals = new bool[Signals.Count];
        await foreach (var scan in ReadAsync(span, cancellationToken).ConfigureAwait(false))
        {
            foreach (var channel in Channels.All)
            {
                channels[(int)channel] |= scan[channel] != Reading.None;
            }

            foreach (var signal in Signals.All)
            {
                signals[(int)signal] |= scan[signal] is not null;
            }
        }

        return new FittedSet(
            Channels.All.ToArray().Where(channel => fitted.Has(channel) || channels[(int)channel]),
            Signals.All.ToArray().Where(signal => fitted.Has(signal) || signals[(int)signal]));
    }

    private async IAsyncEnumerable<Scan> ReadAsync(
        RecordSpan span, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var scans = span.IsByDate
            ? record.ReadScansAsync(
                span.From ?? DateTimeOffset.MinValue, span.To ?? DateTimeOffset.MaxValue, cancellationToken)
            : record.ReadRunScansAsync(span.FirstRun, span.LastRun, cancellationToken);
        await foreach (var scan in scans.ConfigureAwait(false))
        {
            if (scan.Run >= span.FirstRun && scan.Run <= span.LastRun)
            {
                yield return scan;
            }
        }
    }

    /// <summary>
    /// A scan's own label where its clock was trusted; else the date worked out backwards from where it became so.
    /// </summary>
    private DateTimeOffset? DateOf(Scan scan)
    {
        if (scan is { IsUtcTrusted: true, Utc: not null })
        {
            return scan.Utc;
        }

        return _runs.TryGetValue(scan.Run, out var run) && run is { Dating: not RunDating.Undated, From: { } from }
            ? from + (scan.Elapsed - run.FirstElapsed)
            : null;
    }
}
