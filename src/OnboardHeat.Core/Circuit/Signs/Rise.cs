namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// How much a probe has risen in a window: newest above lowest, and only while it goes on rising. Spray warms and
/// warms; a probe that jumps up and down is at fault, and its jumps are no rise.
/// </summary>
internal readonly record struct Rise(double K, double LowestCelsius, double NewestCelsius, double WindowS)
{
    /// <summary>A rise that has fallen back by this share of itself is none.</summary>
    private const double FallsBackShare = 0.5;

    /// <summary>Reads the rise from a trace. False when the probe is old or its window empty.</summary>
    public static bool TryRead(Loop loop, Trace trace, double seconds, out Rise rise)
    {
        var window = loop.Window(seconds);
        rise = default;
        if (!loop.IsFresh(trace) || !trace.TryRange(loop.NowS - window, loop.NowS, out var lowest, out var highest))
        {
            return false;
        }

        var up = trace.Newest - lowest;
        rise = new Rise(highest - trace.Newest < FallsBackShare * up ? up : 0, lowest, trace.Newest, window);
        return true;
    }
}
