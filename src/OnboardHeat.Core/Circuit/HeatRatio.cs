namespace OnboardHeat.Core.Circuit;

/// <summary>
/// This van's own straight line between drive (flow minus water, as its probes show them) and the warming of the water:
/// slope, and what the probes' offsets add to it. Never learnt below a fifth of the first guess: a coil that gives
/// nothing is a failure, not a normal.
/// </summary>
internal sealed class HeatRatio(double priorPerS)
{
    /// <summary>
    /// How far a first guess of the slope may be off, as a share of it, and the offset between flow and tank probe,
    /// kelvin.
    /// </summary>
    private const double SlopeShare = 0.45, OffsetK = 2.5;

    /// <summary>
    /// The figures may drift (pump, thermostat, stratification): a guess is this much less sure after this long.
    /// </summary>
    private const double DriftShare = 0.25, DriftOffsetK = 1, DriftS = 900;

    private readonly StraightLine _line = new(
        priorPerS, SlopeShare * priorPerS, OffsetK * priorPerS, (DriftShare * priorPerS, DriftOffsetK * priorPerS),
        DriftS);

    /// <summary>Warming per kelvin of drive, 1/s.</summary>
    public double RatioPerS => _line.Slope;

    /// <summary>Warming expected at this drive, K/s.</summary>
    public double Expected(double driveK) => _line.Expected(driveK);

    /// <summary>How unsure that is: variance in (K/s)2.</summary>
    public double Variance(double driveK) => _line.Variance(driveK);

    /// <summary>
    /// Learns from one look: the water warmed by so much at this drive, with the variance of the look.
    /// </summary>
    public void Learn(double driveK, double riseKPerS, double variance, double stepS) =>
        _line.Learn(driveK, riseKPerS, variance, stepS, 0.2 * priorPerS);

    /// <summary>
    /// Something has changed (layers have mixed): the slope falls back to a guess at most, and is known less surely.
    /// </summary>
    public void Forget() => _line.Doubt(1.3 * priorPerS, 0.6);
}
