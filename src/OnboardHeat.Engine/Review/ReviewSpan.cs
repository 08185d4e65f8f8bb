using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Review;

/// <summary>
/// A stretch of the record to look at: between two dates, written as an ISO 8601 interval (<c>from/to</c>), or a part
/// of one run, written <c>run/from/to</c> with elapsed seconds, which a run that has no dates has too.
/// </summary>
public sealed record ReviewSpan
{
    /// <summary>Nothing longer is laid over anything.</summary>
    private const double LongestS = 40 * 86_400;

    private ReviewSpan()
    {
    }

    /// <summary>Run; null for a span between two dates.</summary>
    public int? Run { get; private init; }

    /// <summary>Elapsed seconds of the run at its start; 0 for a span between two dates.</summary>
    public double FromS { get; private init; }

    /// <summary>Elapsed seconds at its end.</summary>
    public double ToS { get; private init; }

    /// <summary>Its first date; meaningless for a part of a run.</summary>
    public DateTimeOffset From { get; private init; }

    /// <summary>Its last date; likewise.</summary>
    public DateTimeOffset To { get; private init; }

    /// <summary>
    /// Reads the written form; false when it is none, ends before it begins, or is longer than 40 days.
    /// </summary>
    public static bool TryParse(string? text, out ReviewSpan span)
    {
        span = new ReviewSpan();
        var parts = (text ?? "").Split('/');
        if (parts.Length == 2 && IsoTime.TryParse(parts[0], out var from) && IsoTime.TryParse(parts[1], out var to))
        {
            span = new ReviewSpan { From = from, To = to };
            return from < to && (to - from).TotalSeconds <= LongestS;
        }

        if (parts.Length != 3 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var run)
            || !TrySeconds(parts[1], out var fromS) || !TrySeconds(parts[2], out var toS))
        {
            return false;
        }

        span = new ReviewSpan { Run = run, FromS = fromS, ToS = toS };
        return fromS < toS && toS - fromS <= LongestS;
    }

    /// <summary>Its scans, in order, each with the seconds since the span began.</summary>
    public async IAsyncEnumerable<(double AtS, Scan Scan)> ReadAsync(
        IRecordReader record,
        [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (Run is { } run)
        {
            await foreach (var scan in (await OfRunAsync(record, run, cancellationToken).ConfigureAwait(false))
                .ConfigureAwait(false))
            {
                var elapsedS = scan.Elapsed.TotalSeconds;
                if (scan.Run == run && elapsedS >= FromS && elapsedS <= ToS)
                {
                    yield return (elapsedS - FromS, scan);
                }
            }

            yield break;
        }

        var dates = (await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false)).ToDictionary(one => one.Run);
        await foreach (var scan in record.ReadScansAsync(From, To, cancellationToken).ConfigureAwait(false))
        {
            // A run's own dates, not the scan's label: its clock may have been wrong until it was set.
            if (dates.TryGetValue(scan.Run, out var dated) && dated.To is { } end)
            {
                yield return ((end - (dated.LastElapsed - scan.Elapsed) - From).TotalSeconds, scan);
            }
        }
    }

    private async Task<IAsyncEnumerable<Scan>> OfRunAsync(IRecordReader record, int run,
        CancellationToken cancellationToken)
    {
        var runs = await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false);

        // A dated run can be read in part; dates may lie a little off where its clock was set, so a little more is
        // read.
        return runs.FirstOrDefault(one => one.Run == run) is { To: { } end } dated
            ? record.ReadScansAsync(
                end.AddSeconds(FromS - dated.LastElapsed.TotalSeconds).AddHours(-1),
                end.AddSeconds(ToS - dated.LastElapsed.TotalSeconds).AddHours(1), cancellationToken)
            : record.ReadRunScansAsync(run, run, cancellationToken);
    }

    private static bool TrySeconds(string text, out double seconds) => double.TryParse(
        text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out seconds) && seconds is >= 0 and < 1e9;
}
