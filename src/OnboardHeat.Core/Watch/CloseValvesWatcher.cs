using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Heat leaves the tank through the coolant circuit: by natural circulation while parked, or into an engine that is
/// colder.
/// </summary>
internal sealed class CloseValvesWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>Heat into a cold engine from which on it is worth a word, W, and below which it is over.</summary>
    private const double TakenW = -150, OverW = -30;

    /// <summary>Tank top that is worth keeping, °C.</summary>
    private const double WorthCelsius = 40;

    private static readonly string[] s_whatToDo =
    [
        "With the engine off, close both isolation valves to the coil; mind that lines may be hot.",
        "Open them again before the next drive that is to heat the tank.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.CloseValves);
    private readonly AlarmPoint _stopped = board.Point(AlarmKind.CirculationStopped);
    private readonly AlarmPoint _loss = board.Point(AlarmKind.CoolantLoss);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        CanJudge = input.CanJudgeTank;
        if (CanJudge != true)
        {
            return;
        }

        var tank = input.Tank;
        var areOpen = input.Scan[Signal.ValvesClosed] != true;
        var isWorth = input.HoldsKnownWater && tank.TopCelsius.Value > WorthCelsius;
        // Where nothing goes round, nothing is carried away: what falls then is not the engine's doing.
        var isTaken = !input.Test.IsStopped && !input.Test.IsLoss && !_stopped.IsPresent && !_loss.IsStanding
            && tank.HeatingW.Value < (_point.IsPresent ? OverW : TakenW);
        var holds = areOpen && isWorth && (tank.IsLosingThroughCircuit || isTaken);
        if (_point.Observe(holds, input.Scan.ElapsedS))
        {
            _point.Say(
                isTaken
                    ? FormattableString.Invariant(
                        $"the engine is colder than the tank and takes {-tank.HeatingW.Value:0} W out of it")
                    : FormattableString.Invariant($"the tank at {tank.TopCelsius.Value:0.0} °C cools ")
                        + "several times faster than its lagging explains",
                s_whatToDo);
        }
    }
}
