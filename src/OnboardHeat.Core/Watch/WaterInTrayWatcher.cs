using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// A wet or suddenly warm tray while the circuit goes on as usual: domestic water or rain. It waits, so that a loss of
/// coolant is told as such and not as this.
/// </summary>
internal sealed class WaterInTrayWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>
    /// Time for the circuit's own signs to speak first, seconds: nine of ten losses are told by then.
    /// </summary>
    private const double WaitS = 120;

    /// <summary>
    /// What the tray must say of hot liquid, nats (see its sign), and how warm above the air it counts as wet still,
    /// kelvin.
    /// </summary>
    private const double LiquidNats = 4.5, StillWarmK = 3;

    private static readonly string[] s_whatToDo =
    [
        "When you stop: look into the tray and feel with care whether it is water; it may scald.",
        "Look at the tank's fittings, the relief valve's drain and the tap's hose. Shut the water pump off.",
        "If it is coloured or smells sweet it is coolant: engine off, isolation valves closed.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.WaterInTray);
    private readonly AlarmPoint _loss = board.Point(AlarmKind.CoolantLoss);
    private double _sinceS = double.NaN;

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var loop = input.Loop;
        var isWet = input.Scan[Signal.TrayWet];
        var hasTray = loop.IsFresh(loop.Tray);
        CanJudge = input.Van.Fitted.Has(Channel.Tray) || input.Van.Fitted.Has(Signal.TrayWet)
            ? hasTray || isWet is not null : null;
        var warmK = hasTray ? loop.Tray.Newest - loop.AirCelsius : 0;
        var began = isWet == true || input.Test.TrayNats >= LiquidNats;
        var goesOn = !double.IsNaN(_sinceS) && (isWet == true || warmK > StillWarmK);
        _sinceS = !(began || goesOn) ? double.NaN : double.IsNaN(_sinceS) ? input.Scan.ElapsedS : _sinceS;
        var holds = input.Scan.ElapsedS - _sinceS >= WaitS && !input.Test.IsLoss && !_loss.IsStanding
            && input.Circuit.IsCirculating != false;
        if (_point.Observe(holds || (_point.IsPresent && goesOn && !_loss.IsStanding), input.Scan.ElapsedS))
        {
            var state = isWet == true ? "wet" : FormattableString.Invariant($"{warmK:0.0} K warmer than the air");
            var circuit = input.Circuit.IsCirculating == true
                ? "while coolant goes round as usual"
                : "and no loss of coolant is seen";
            _point.Say(
                FormattableString.Invariant($"tray {state} for {input.Scan.ElapsedS - _sinceS:0} s, {circuit}"),
                s_whatToDo);
        }
    }
}
