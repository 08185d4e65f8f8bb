namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Does the engine run? The signal says so where there is one. Without it the lines do: only an engine warms them
/// quickly, and lines that only cool for minutes have none.
/// </summary>
internal sealed class EngineSense
{
    /// <summary>
    /// Only an engine warms a line so fast, K/s; the tank's own heat rising into a line gives a third of it (recorded
    /// nights).
    /// </summary>
    private const double WarmingKPerS = 0.03;

    /// <summary>
    /// Without a signal: both lines cooling without a break for so long, seconds, means that the engine stands.
    /// </summary>
    private const double CoolingForS = 150;

    /// <summary>A stop shorter than this does not undo what was seen, seconds.</summary>
    private const double ShortStopS = 300;

    /// <summary>
    /// A line kept as hot as it is, for so long, seconds, with coolant hotter than the air by so much, kelvin, is fed:
    /// a full pipe at rest cools with a time constant of 4,500 s at the slowest (recorded stops), and a fed one that is
    /// slower than this does not cool at all.
    /// </summary>
    private const double KeptHotForS = 40, KeptHotK = 20, KeptHotTauS = 9000;

    private const double WindowS = 40;

    private bool _wasProven;
    private double _startedS, _stoppedS = double.NegativeInfinity, _coolingS;

    public void Observe(Loop loop, bool? signal)
    {
        var warms = loop.TrySlope(loop.Flow, WindowS, out var flow)
            && flow.KPerS > WarmingKPerS && flow.Celsius > loop.AirCelsius;
        loop.IsEngineInferred = signal is null;
        var isOn = signal ?? Infer(loop, warms, flow.KPerS);
        if (isOn is { } now && now != loop.IsEngineOn)
        {
            (now ? ref _startedS : ref _stoppedS) = loop.NowS;
            // What ran before a short stop may be found stopped after it; a longer one has to be proven anew.
            loop.IsProven = now ? _wasProven && loop.NowS - _stoppedS < ShortStopS : Remember(loop);
        }

        loop.IsEngineOn = isOn ?? loop.IsEngineOn;
        loop.EngineOnS = loop.IsEngineOn == true ? loop.NowS - _startedS : 0;
        loop.EngineOffS = loop.IsEngineOn == false ? loop.NowS - _stoppedS : 0;
        loop.IsProven |= loop.IsEngineOn == true
            && ((loop.EngineOnS > 20 && warms) || (loop.EngineOnS > KeptHotForS && IsKeptHot(loop)));
    }

    private bool Remember(Loop loop)
    {
        _wasProven = loop.IsProven;
        return false;
    }

    private static bool IsKeptHot(Loop loop)
    {
        return loop.TrySlope(loop.Flow, KeptHotForS, out var flow) && flow.Celsius > loop.AirCelsius + KeptHotK
            && flow.KPerS + (2 * flow.DeviationKPerS) > -(flow.Celsius - loop.AirCelsius) / KeptHotTauS
            && flow.DeviationKPerS < (flow.Celsius - loop.AirCelsius) / KeptHotTauS;
    }

    private bool? Infer(Loop loop, bool warms, double flowKPerS)
    {
        var cools = flowKPerS < -0.004 && loop.TrySlope(loop.Return, WindowS, out var back) && back.KPerS < -0.004;
        _coolingS = cools ? _coolingS + loop.StepS : 0;
        return warms ? true : _coolingS > CoolingForS ? false : loop.IsEngineOn;
    }
}
