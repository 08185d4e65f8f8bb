using OnboardHeat.Core;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>
/// The journeys on record. Those that ended are kept there as they were found; what was still going on when a run
/// stopped or lost its power is found again from its last scans, and so is what goes on now.
/// </summary>
public sealed class JourneyBook(IRecordReader record, VanDescription van)
{
    /// <summary>
    /// A journey is kept at its end: one that began before the right edge may lie this far behind it (a van laid up).
    /// </summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromDays(30);

    /// <summary>
    /// So much of a run's end is looked through again at most: a long night. What stood longer than that is told by its
    /// scans, and the look stays well under a second on a small machine.
    /// </summary>
    private static readonly TimeSpan s_tailMost = TimeSpan.FromHours(20);

    /// <summary>The estimate settles in so long before anything it says counts.</summary>
    private static readonly TimeSpan s_settles = TimeSpan.FromMinutes(15);

    /// <summary>
    /// A run whose newest scan is less than this further on than when it was looked at is not looked at again.
    /// </summary>
    private static readonly TimeSpan s_staysFresh = TimeSpan.FromMinutes(5);

    /// <summary>Runs whose ends are remembered; a van makes a few a day.</summary>
    private const int TailsKept = 400;

    private readonly Lock _lock = new();
    private readonly Dictionary<int, (TimeSpan Last, IReadOnlyList<Journey> Found)> _tails = [];

    /// <summary>Journeys that touch a span of time, in the order of run and start.</summary>
    public async Task<IReadOnlyList<DatedJourney>> ReadAsync(DateTimeOffset from, DateTimeOffset to,
        CancellationToken cancellationToken)
    {
        var runs = await record.ReadRunsAsync(cancellationToken).ConfigureAwait(false);
        var byRun = runs.ToDictionary(run => run.Run);
        var found = new List<DatedJourney>();
        var kept = new Dictionary<int, List<Journey>>();
        await foreach (var recorded in record.ReadEventsAsync(from, Later(to, s_longest), cancellationToken)
            .ConfigureAwait(false))
        {
            if (JourneyJson.Read(recorded) is { } journey && byRun.TryGetValue(recorded.Run, out var run))
            {
                (kept.TryGetValue(run.Run, out var list) ? list : kept[run.Run] = []).Add(journey);
                found.Add(Dated(journey, recorded, run));
            }
        }

        foreach (var run in runs.Where(run => (run.To ?? DateTimeOffset.MinValue) >= from
            && (run.From ?? DateTimeOffset.MinValue) <= to))
        {
            var isNewest = run.Run == runs[^1].Run;
            var ends = await TailAsync(run, kept.GetValueOrDefault(run.Run, []), to, cancellationToken)
                .ConfigureAwait(false);
            found.AddRange(ends.Select(journey => Dated(journey, run, isNewest)));
        }

        return
        [
            .. found.Where(one => one.To is null || (one.To >= from && one.From <= to))
                .OrderBy(one => one.Journey.Run).ThenBy(one => one.Journey.FromS),
        ];
    }

    private static DatedJourney Dated(Journey journey, RecordedEvent recorded, RecordedRun run)
    {
        var end = recorded.Utc - (recorded.Elapsed - TimeSpan.FromSeconds(journey.ToS));
        return new DatedJourney(journey, end - TimeSpan.FromSeconds(journey.ToS - journey.FromS), end, run.Dating,
            IsOpen: false);
    }

    private static DatedJourney Dated(Journey journey, RecordedRun run, bool isOpen)
    {
        var end = run.To - (run.LastElapsed - TimeSpan.FromSeconds(journey.ToS));
        return new DatedJourney(journey, end - TimeSpan.FromSeconds(journey.ToS - journey.FromS), end, run.Dating,
            isOpen);
    }

    private async Task<IReadOnlyList<Journey>> TailAsync(
        RecordedRun run, IReadOnlyList<Journey> kept, DateTimeOffset to, CancellationToken cancellationToken)
    {
        // Journeys that end behind what was read would be taken for missing.
        var isWhole = (run.To ?? DateTimeOffset.MinValue) <= Later(to, s_longest);
        if (!isWhole)
        {
            return [];
        }

        lock (_lock)
        {
            if (_tails.TryGetValue(run.Run, out var known) && run.LastElapsed - known.Last < s_staysFresh)
            {
                return [.. known.Found.Where(journey => IsMissing(journey, kept))];
            }
        }

        var begin = kept.Count > 0 ? TimeSpan.FromSeconds(kept.Max(journey => journey.ToS)) - s_settles
            : run.FirstElapsed;
        begin = begin < run.FirstElapsed ? run.FirstElapsed : begin;
        var found = run.LastElapsed - begin <= s_tailMost
            ? await ReplayAsync(run, begin, cancellationToken).ConfigureAwait(false)
            : [];
        lock (_lock)
        {
            if (_tails.Count >= TailsKept)
            {
                _tails.Clear();
            }

            _tails[run.Run] = (run.LastElapsed, found);
        }

        return [.. found.Where(journey => IsMissing(journey, kept))];
    }

    private async Task<IReadOnlyList<Journey>> ReplayAsync(RecordedRun run, TimeSpan begin,
        CancellationToken cancellationToken)
    {
        var monitor = new Monitor(van, KeptState.Fresh, ForecastTiming.WhenAsked);
        var found = new List<Journey>();
        var scans = run is { To: { } last }
            ? record.ReadScansAsync(last - (run.LastElapsed - begin), last.AddSeconds(1), cancellationToken)
            : record.ReadRunScansAsync(run.Run, run.Run, cancellationToken);
        await foreach (var scan in scans.ConfigureAwait(false))
        {
            if (scan.Run == run.Run && scan.Elapsed >= begin)
            {
                found.AddRange(monitor.Observe(scan).Journeys);
            }
        }

        found.AddRange(monitor.EndJourneys());
        return found;
    }

    /// <summary>Whether nothing kept of its type lies over it.</summary>
    private static bool IsMissing(Journey journey, IReadOnlyList<Journey> kept) =>
        !kept.Any(other => IsAlike(other.Type, journey.Type) && other.ToS > journey.FromS && other.FromS < journey.ToS);

    // A rest that began as a standing spell may be seen again as a stop.
    private static bool IsAlike(JourneyType one, JourneyType other) => one == other
        || (one is JourneyType.Standing or JourneyType.Stop && other is JourneyType.Standing or JourneyType.Stop);

    private static DateTimeOffset Later(DateTimeOffset time, TimeSpan by) =>
        time > DateTimeOffset.MaxValue - by ? DateTimeOffset.MaxValue : time + by;
}
