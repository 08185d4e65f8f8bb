using OnboardHeat.Core.Works;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Works mode keeps the circuit's watchers quiet, so it must not be forgotten: it is told when the engine runs for long
/// while it is on, and asked for when it has been on for hours. It never ends by itself: a person may have the circuit
/// open.
/// </summary>
internal sealed class WorksOpenWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>A stop at lights, or a look under the bonnet, does not begin the quarter of an hour anew, s.</summary>
    private const double ShortStopS = 120;

    private static readonly string[] s_whatToDo =
    [
        "Works done: end works mode, so that a loss of coolant is told again.",
        "Still at it: leave it on, and acknowledge this. The circuit is not watched meanwhile.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.WorksOpen);
    private double _ranS;
    private double _stoodS;

    public string Name => _point.Definition.Name;

    public bool? CanJudge => true;

    public void Observe(WatchInput input)
    {
        CountEngine(input);
        // The quarter of an hour is counted here, over short stops: the alarm's own delay would begin anew with each.
        var isLong = input.IsInWorks && input.WorksAgeS >= WorksWords.AskAfterS;
        var hasRun = input.IsInWorks && _ranS >= _point.Definition.OnDelayS;
        var offDelayS = input.IsInWorks ? _point.Definition.OffDelayS : 0;
        if (_point.Observe(isLong || hasRun, input.Scan.ElapsedS, 0, offDelayS))
        {
            _point.Say(
                hasRun
                    ? FormattableString.Invariant(
                        $"works mode is on and the engine has run for {_ranS / 60:0} min: the circuit is not watched")
                    : FormattableString.Invariant(
                        $"works mode is on for {input.WorksAgeS / 3600:0.0} h: the circuit is not watched"),
                s_whatToDo);
        }
    }

    private void CountEngine(WatchInput input)
    {
        var isRunning = input.IsInWorks && input.Circuit.IsEngineRunning == true;
        _stoodS = isRunning ? 0 : _stoodS + input.Scan.StepS;
        _ranS = isRunning ? _ranS + input.Scan.StepS : !input.IsInWorks || _stoodS > ShortStopS ? 0 : _ranS;
    }
}
