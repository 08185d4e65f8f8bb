namespace OnboardHeat.Core.Watch;

/// <summary>
/// Works mode keeps the circuit's watchers quiet, so it must not be forgotten: it is told when the engine runs for long while it is on,
/// and asked for when it has been on for hours. It never ends by itself: a person may have the circuit open.
/// </summary>
internal sealed class WorksOpenWatcher(AlarmBoard board) : IWatcher
{
    // Longer than any bleeding run with the engine on; the delay of the alarm itself is for a running engine (owner's rule: 15 min).
    private const double AskAfterS = 4 * 3600;

    private static readonly string[] s_whatToDo =
    [
        "Works done: end works mode, so that a loss of coolant is told again.",
        "Still at it: leave it on, and acknowledge this. The circuit is not watched meanwhile.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.WorksOpen);

    public string Name => _point.Definition.Name;

    public bool? CanJudge => true;

    public void Observe(WatchInput input)
    {
        var isLong = input.IsInWorks && input.WorksAgeS >= AskAfterS;
        var isRunning = input.IsInWorks && input.Circuit.IsEngineRunning == true;
        var onDelayS = isLong ? 0 : _point.Definition.OnDelayS;
        var offDelayS = input.IsInWorks ? _point.Definition.OffDelayS : 0;
        if (_point.Observe(isLong || isRunning, input.Scan.ElapsedS, onDelayS, offDelayS))
        {
            _point.Say(
                isRunning
                    ? FormattableString.Invariant($"works mode is on for {input.WorksAgeS / 60:0} min and the engine runs: the circuit is not watched")
                    : FormattableString.Invariant($"works mode is on for {input.WorksAgeS / 3600:0.0} h: the circuit is not watched"),
                s_whatToDo);
        }
    }
}
