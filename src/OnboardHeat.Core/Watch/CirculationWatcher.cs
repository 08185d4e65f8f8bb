using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// The engine runs warm and no coolant passes the coil. Says what is possible; the lines alone cannot tell closed
/// valves from a loss in the engine bay until the speed of their fall does, and then <see cref="CoolantLossWatcher"/>
/// speaks.
/// </summary>
internal sealed class CirculationWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>The heat balance must hold for so long, seconds, before it counts as circulating again.</summary>
    private const double RunsAgainS = 60;

    private static readonly string[] s_whatToDo =
    [
        "Look at the vehicle's own temperature gauge. If it climbs or drops oddly: stop when it is safe, engine off.",
        "Possible: isolation valves closed (then nothing is wrong), air in the loop, a pump that slips, or coolant "
            + "lost at the engine.",
        "Once stopped: look at the valves, then under the engine, then at both hoses. Never open a hot coolant cap.",
        "When cold: check the coolant level before driving on.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.CirculationStopped);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var fitted = input.Van.Fitted;
        var test = input.Test;
        CanJudge = fitted.Has(Channel.Flow) && (fitted.Has(Channel.Return) || fitted.Has(Channel.TankBottom))
            ? test.CanJudgeCirculation : null;
        var areValvesClosed = input.Scan[Signal.ValvesClosed] == true;
        // Silence is no repair: with the engine running only warm coolant that comes again ends it, or the valves' own
        // contact.
        var goesOn = _point.IsPresent && input.Loop.IsEngineOn == true && test.RunsForS < RunsAgainS;
        if (_point.Observe(!areValvesClosed && (test.IsStopped || goesOn), input.Scan.ElapsedS))
        {
            _point.Say(
                test.IsStopped || _point.Because.Length == 0 ? test.Because(input.Loop) : _point.Because, s_whatToDo);
        }
    }
}
