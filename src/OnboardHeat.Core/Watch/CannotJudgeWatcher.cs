using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Says when another watcher has lost the readings it needs: silence must never pass for 'all well'. What was never
/// fitted is no alarm; <see cref="WatcherStatus"/> lists it. Watchers that only advise are listed too and not alarmed,
/// so that one dead probe makes no flood.
/// </summary>
internal sealed class CannotJudgeWatcher : IWatcher
{
    private static readonly string[] s_whatToDo =
    [
        "Until it judges again, look after it yourself: tray, hoses and the vehicle's own temperature gauge.",
        "See to the probes named; their own alarms say what to check.",
    ];

    /// <summary>
    /// So long a watcher of a warning may lack its readings, seconds: most faults of a probe are over by then.
    /// </summary>
    private const double WarningDelayS = 600;

    private readonly IWatcher[] _watched;
    private readonly AlarmPoint[] _points;

    public CannotJudgeWatcher(AlarmBoard board, IWatcher[] others)
    {
        _watched = [.. others.Where(w => AlarmTable.Find(w.Name) is { Priority: > AlarmPriority.Advice })];
        _points = [.. _watched.Select(w => board.Point(AlarmKind.CannotJudge, w.Name))];
    }

    public string Name => AlarmTable.Of(AlarmKind.CannotJudge).Name;

    public bool? CanJudge => true;

    public void Observe(WatchInput input)
    {
        for (var i = 0; i < _watched.Length; i++)
        {
            // During works the circuit's watchers are out of service, and probes come off by right.
            var isOut = input.IsInWorks && AlarmTable.Find(_watched[i].Name) is { IsOfCircuit: true };
            var definition = _points[i].Definition;
            var delayS = AlarmTable.Find(_watched[i].Name) is { Priority: AlarmPriority.Critical }
                ? definition.OnDelayS
                : WarningDelayS;
            if (_points[i].Observe(
                _watched[i].CanJudge == false && !isOut, input.Scan.ElapsedS, delayS, definition.OffDelayS))
            {
                _points[i]
                    .Say($"{_watched[i].Name} is not judged: no believed reading from {Doubted(input)}", s_whatToDo);
            }
        }
    }

    private static string Doubted(WatchInput input)
    {
        var names = new List<string>();
        foreach (var channel in Channels.All)
        {
            if (input.Van.Fitted.Has(channel) && !input.Scan[channel].IsGood)
            {
                names.Add(Channels.NameOf(channel));
            }
        }

        return names.Count > 0 ? string.Join(", ", names) : "the signals it needs";
    }
}
