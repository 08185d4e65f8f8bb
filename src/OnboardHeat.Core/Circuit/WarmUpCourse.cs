namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Where a warming part is heading. An engine warms nearly straight until its thermostat opens and then stops: the
/// course is a straight line towards the temperature that engines hold, and no further unless the part already rises
/// above it.
/// </summary>
internal sealed class WarmUpCourse
{
    /// <summary>
    /// Coolant of a warm engine, degrees Celsius: thermostats open at 80 to 92 (common practice, no source).
    /// </summary>
    private const double HoldsCelsius = 88;

    /// <summary>The rise is taken over this time, seconds, and must be more than air and sun make, K/s.</summary>
    private const double WindowS = 90, LeastRiseKPerS = 0.012;

    private readonly Trace _trace = new();
    private Slope _slope;
    private bool _isKnown;

    /// <summary>The rise, kelvin per minute.</summary>
    public double RiseKPerMin => _slope.KPerS * 60;

    public void Observe(double elapsedS, double celsius)
    {
        _trace.Add(elapsedS, celsius);
        _isKnown = _trace.TrySlope(elapsedS - WindowS, elapsedS, out _slope);
    }

    /// <summary>Seconds until a temperature is reached on this course; infinite when it is not.</summary>
    public double SecondsTo(double celsius)
    {
        if (!_isKnown || _slope.KPerS < LeastRiseKPerS)
        {
            return double.PositiveInfinity;
        }

        var leftK = celsius - _trace.Newest;
        // Above what engines hold only a climb leads, and a climb is short: nearer than its present rise carries it in
        // three minutes.
        return celsius <= HoldsCelsius || leftK < _slope.KPerS * 180
            ? Math.Max(0, leftK / _slope.KPerS) : double.PositiveInfinity;
    }
}
