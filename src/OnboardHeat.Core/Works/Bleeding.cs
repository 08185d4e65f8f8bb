using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Works;

/// <summary>
/// Helps a person who fills and bleeds the circuit: which line is warm, whether the other follows, whether air still
/// moves, and when coolant circulates for good. It only tells what the probes show; whoever works looks at the bottle.
/// </summary>
internal sealed class Bleeding
{
    /// <summary>
    /// The heat balance must hold for so long, s, before circulation counts as established (from the issue).
    /// </summary>
    public const double EstablishedS = 180;

    /// <summary>A line so much above the air, K, is warm: more than the sun or a warm floor does.</summary>
    private const double WarmK = 10;

    /// <summary>
    /// The tank's warming is taken over so long, s: twice the lag of its probes, and noise falls to 0.0002 K/s.
    /// </summary>
    private const double BalanceS = 120;

    /// <summary>Coolant must be so much hotter than the tank, K, that its heat can be seen to arrive.</summary>
    private const double LeastDriveK = 6;

    /// <summary>
    /// Heat that must arrive for each kelvin, W/K: a third of what a small coil gives at idle, and no less than the
    /// drift of a standing tank, K/s (mixing and conduction between layers).
    /// </summary>
    private const double LeastWPerK = 8, DriftKPerS = 0.0008;

    private readonly LineHunt _flow = new();
    private readonly LineHunt _return = new();

    public LineWarmth Flow { get; private set; }

    public LineWarmth Return { get; private set; }

    public BleedingStep Step { get; private set; }

    /// <summary>Seconds for which the heat balance has held without a break and without air moving.</summary>
    public double CirculatesForS { get; private set; }

    /// <summary>Whether the coolant is hot enough against the tank to show the heat that it carries.</summary>
    public bool CanShowHeat { get; private set; }

    /// <summary>Looks at the loop after a scan of a job.</summary>
    public void Observe(Loop loop)
    {
        Flow = WarmthOf(loop, loop.Flow);
        Return = WarmthOf(loop, loop.Return);
        Follow(_flow, loop, loop.Flow);
        Follow(_return, loop, loop.Return);
        var isHunting = loop.IsEngineOn != false && (_flow.IsHunting(loop.NowS) || _return.IsHunting(loop.NowS));
        CirculatesForS = !isHunting && IsHeatArriving(loop) ? CirculatesForS + loop.StepS : 0;
        Step = (loop.IsEngineOn, Flow, Return) switch
        {
            (_, LineWarmth.Unknown, _) or (_, _, LineWarmth.Unknown) => BleedingStep.CannotTell,
            (false, _, _) => BleedingStep.EngineOff,
            _ when isHunting => BleedingStep.AirMoving,
            _ when CirculatesForS >= EstablishedS => BleedingStep.Circulating,
            (_, LineWarmth.Warm, LineWarmth.Warm) => BleedingStep.Following,
            (_, LineWarmth.Cold, LineWarmth.Cold) => BleedingStep.WarmingUp,
            _ => BleedingStep.OneLineOnly,
        };
    }

    /// <summary>A new job knows nothing of the last one.</summary>
    public void Begin()
    {
        _flow.Clear();
        _return.Clear();
        CirculatesForS = 0;
    }

    /// <summary>
    /// The heat balance: coolant is hotter than the tank, and the tank warms as a coil in it would make it.
    /// </summary>
    private bool IsHeatArriving(Loop loop)
    {
        CanShowHeat = false;
        if (loop.IsEngineOn == false || !loop.IsFresh(loop.Flow) || !loop.IsFresh(loop.Return)
            || !loop.TrySlope(loop.Bottom, BalanceS, out var bottom))
        {
            return false;
        }

        var driveK = ((loop.Flow.Newest + loop.Return.Newest) / 2) - bottom.Celsius;
        var risesKPerS = bottom.KPerS;
        if (loop.TrySlope(loop.Top, BalanceS, out var top))
        {
            risesKPerS = Math.Max(risesKPerS, top.KPerS);
        }

        CanShowHeat = driveK >= LeastDriveK;
        return CanShowHeat && risesKPerS > Math.Max(DriftKPerS, LeastWPerK * driveK / loop.TankJPerK);
    }

    private static LineWarmth WarmthOf(Loop loop, Trace line) =>
        !loop.IsFresh(line) ? LineWarmth.Unknown
        : line.Newest > loop.AirCelsius + WarmK ? LineWarmth.Warm
        : LineWarmth.Cold;

    private static void Follow(LineHunt hunt, Loop loop, Trace line)
    {
        if (loop.IsFresh(line))
        {
            hunt.Observe(loop.NowS, line.Newest);
        }
    }
}
