using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tank;

/// <summary>What the estimate takes from a scan.</summary>
internal static class TankReadings
{
    /// <summary>The first of three that is good, °C; the last value of the third if none is.</summary>
    public static double Nearest(ScreenedScan scan, Channel first, Channel second, Channel third) =>
        scan[first].IsGood ? scan[first].Value : scan[second].IsGood ? scan[second].Value : scan[third].Value;

    /// <summary>Coolant in the coil as its probes show it; null when none passes, or when nobody can know.</summary>
    public static double? CoolantOf(ScreenedScan scan)
    {
        if (scan[Signal.EngineRunning] != true || scan[Signal.ValvesClosed] == true)
        {
            return null;
        }

        var flow = scan[Channel.Flow];
        var back = scan[Channel.Return];
        return (flow.IsGood, back.IsGood) switch
        {
            (true, true) => 0.5 * (flow.Value + back.Value),
            (true, false) => flow.Value,
            (false, true) => back.Value,
            _ => null,
        };
    }
}
