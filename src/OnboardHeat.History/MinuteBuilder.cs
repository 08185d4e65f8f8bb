using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History;

/// <summary>
/// Gathers turns until a block is closed: a minute while driving, ten minutes parked, and soon after an alarm or an
/// action, because power may go next.
/// </summary>
internal sealed class MinuteBuilder
{
    public static readonly TimeSpan Driving = TimeSpan.FromMinutes(1);
    public static readonly TimeSpan Parked = TimeSpan.FromMinutes(10);

    /// <summary>Events close a block no more often than this: an alarm that chatters must not wear the card.</summary>
    private static readonly TimeSpan s_eventsApart = TimeSpan.FromSeconds(10);

    /// <summary>
    /// Where nothing tells whether the engine runs, readings that move this far say that something goes on.
    /// </summary>
    private const double MovedK = 0.5;

    private readonly List<Scan> _scans = [];
    private readonly List<Entry> _entries = [];
    private bool _hasEvent;
    private long _gap;
    private bool _isDriving;
    private Forecast _forecast = Forecast.Unknown;
    private TimeSpan _closedAt = TimeSpan.MinValue;

    /// <summary>Takes a turn; gives the block that it closed, if any.</summary>
    public MinuteDraft? Add(Turn turn)
    {
        var before = _scans.Count > 0 && _scans[^1].Run != turn.Scan.Run ? Close() : null;
        _closedAt = before is null ? _closedAt : TimeSpan.MinValue;
        _scans.Add(turn.Scan);
        _forecast = turn.Picture.Forecast;
        Note(turn);
        _isDriving = turn.Picture.Circuit.IsEngineRunning ?? HasMoved(turn.Scan);
        var now = turn.Scan.Elapsed;
        var isFull = now - _scans[0].Elapsed >= (_isDriving ? Driving : Parked);
        var isWanted = _hasEvent && (_closedAt == TimeSpan.MinValue || now - _closedAt >= s_eventsApart);
        return before ?? (isFull || isWanted ? Close() : null);
    }

    /// <summary>So many turns were lost before the one that comes next.</summary>
    public void NoteGap(long turns) => _gap += turns;

    /// <summary>Closes what was gathered; null when that is nothing.</summary>
    public MinuteDraft? Close()
    {
        if (_scans.Count == 0)
        {
            return null;
        }

        var last = _scans[^1];
        _entries.Add(new Entry(last.Elapsed, null, Figures(_forecast)));
        var header = new BlockHeader(
            BlockKind.Scans, last.Run, 0, 0, _scans[0].Elapsed, last.Elapsed, _scans.Count, 0, AnchorOf(_scans));
        var draft = new MinuteDraft(header, ScanCodec.Encode(_scans), [.. _entries]);
        _closedAt = last.Elapsed;
        _scans.Clear();
        _entries.Clear();
        _hasEvent = false;
        return draft;
    }

    private static TimeAnchor AnchorOf(List<Scan> scans)
    {
        var labelled = scans.FindLast(scan => scan.Utc is not null && scan.IsUtcTrusted)
            ?? scans.Find(scan => scan.Utc is not null);
        return labelled is null
            ? default
            : new TimeAnchor(
                labelled.IsUtcTrusted ? AnchorQuality.Trusted : AnchorQuality.Claimed, labelled.Elapsed,
                labelled.Utc!.Value.UtcTicks);
    }

    private static double?[] Figures(Forecast forecast) =>
    [
        forecast.StoredEnergyKWh, forecast.ShowerMinutes, forecast.ShowerMinutesLow, forecast.ShowerMinutesHigh,
        forecast.HeatingWatts,
        forecast.LossCoefficientWPerK,
    ];

    private void Note(Turn turn)
    {
        var run = turn.Scan.Run;
        var elapsed = turn.Scan.Elapsed;
        if (_gap > 0)
        {
            Note(new RecordedEvent(
                run, elapsed, null, "mark", "history-gap", "",
                $"{_gap} scans before this were not recorded: the record was too slow"));
            _gap = 0;
        }

        foreach (var action in turn.Scan.Actions)
        {
            var kind = action.IsChangeMark ? "mark" : "action";
            Note(new RecordedEvent(run, elapsed, null, kind, PersonAction.NameOf(action.Kind), action.Target,
                action.Text));
        }

        foreach (var change in turn.Picture.Changes)
        {
            var name = change.Subject.Length == 0 ? change.Definition.Name
                : $"{change.Definition.Name}/{change.Subject}";
            Note(new RecordedEvent(run, elapsed, null, "alarm", name, change.IsRaised ? "raised" : "cleared",
                change.Because));
        }

        // A journey is worked out from the scans: it closes no block, because its loss in a power cut can be made good.
        foreach (var journey in turn.Picture.Journeys)
        {
            _entries.Add(new Entry(elapsed, JourneyJson.EventOf(journey, elapsed), null));
        }
    }

    private void Note(RecordedEvent happened)
    {
        _entries.Add(new Entry(happened.Elapsed, happened, null));
        _hasEvent = true;
    }

    private bool HasMoved(Scan now)
    {
        foreach (var channel in Channels.All)
        {
            if (now[channel].HasValue && _scans[0][channel].HasValue
                && Math.Abs(now[channel].Value - _scans[0][channel].Value) >= MovedK)
            {
                return true;
            }
        }

        return false;
    }
}
