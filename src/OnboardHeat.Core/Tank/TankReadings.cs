using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tank;

/// <summary>What the estimate takes from a scan.</summary>
internal static class TankReadings
{
    /// <summary>
    /// Steps of a probe (K) and the fastest that a coil heats (K/s): more is a probe that still warms to its place, or
    /// nonsense.
    /// </summary>
    private const double SteadyK = 0.25, SteadyKPerS = 0.04;

    /// <summary>The first of three that is good, °C; the last value of the third if none is.</summary>
    public static double Nearest(ScreenedScan scan, Channel first, Channel second, Channel third) =>
        scan[first].IsGood ? scan[first].Value : scan[second].IsGood ? scan[second].Value : scan[third].Value;

    /// <summary>The lowest tank probe that is good: 0 top, 1 middle, 2 bottom; -1 for none.</summary>
    public static int LowestGood(ScreenedScan scan) =>
        scan[Channel.TankBottom].IsGood ? 2 : scan[Channel.TankMiddle].IsGood
            ? 1 : scan[Channel.TankTop].IsGood ? 0 : -1;

    /// <summary>What a channel reads, °C; NaN when it is not to be believed.</summary>
    public static double Of(ScreenedScan scan, Channel channel) =>
        scan[channel].IsGood ? scan[channel].Value : double.NaN;

    /// <summary>
    /// The colder of the two lines, °C: by it coolant enters that turns by its own buoyancy. Null when none is read.
    /// </summary>
    public static double? ColderLineOf(ScreenedScan scan) =>
        (scan[Channel.Flow].IsGood, scan[Channel.Return].IsGood) switch
    {
        (true, true) => Math.Min(scan[Channel.Flow].Value, scan[Channel.Return].Value),
        (true, false) => scan[Channel.Flow].Value,
        (false, true) => scan[Channel.Return].Value,
        _ => null,
    };

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

    /// <summary>
    /// Whether each tank probe reads about what it read a scan ago: a bus that wakes up can give one scan of nonsense,
    /// and the first belief weighs much.
    /// </summary>
    public static bool AreSteady(ScreenedScan scan, Span<double> beforeCelsius)
    {
        var (isSteady, hasProbe) = (true, false);
        for (var p = 0; p < 3; p++)
        {
            var reading = scan[Channel.TankTop + p];
            hasProbe |= reading.IsGood;
            isSteady &= !reading.IsGood
                || Math.Abs(reading.Value - beforeCelsius[p]) < SteadyK + (SteadyKPerS * scan.StepS);
            beforeCelsius[p] = reading.IsGood ? reading.Value : double.NaN;
        }

        return isSteady && hasProbe;
    }
}
