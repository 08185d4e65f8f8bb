namespace OnboardHeat.Core.Journeys;

/// <summary>
/// Pace at which the stored heat changes: the lag between a quick and a slow running mean. A steady rise keeps the two
/// apart by the rise in the difference of their time constants, so no history need be held.
/// </summary>
internal sealed class HeatSlope(double quickS, double slowS)
{
    /// <summary>After a gap this many slow time constants long the old means say nothing.</summary>
    private const double ForgetsAfter = 3;

    private double _quickJ = double.NaN;
    private double _slowJ;

    /// <summary>Watts; positive when the tank warms. Zero until two scans are there.</summary>
    public double W { get; private set; }

    /// <summary>The stored heat before the change that is being seen: the slow mean, joules.</summary>
    public double BeforeJ => _slowJ;

    /// <summary>Seconds by which a sudden change is seen late.</summary>
    public double LagS => quickS;

    public void Observe(double stepS, double storedJ)
    {
        if (double.IsNaN(_quickJ) || stepS > ForgetsAfter * slowS)
        {
            _quickJ = storedJ;
            _slowJ = storedJ;
            W = 0;
            return;
        }

        _quickJ += (storedJ - _quickJ) * stepS / (quickS + stepS);
        _slowJ += (storedJ - _slowJ) * stepS / (slowS + stepS);
        W = (_quickJ - _slowJ) / (slowS - quickS);
    }
}
