namespace OnboardHeat.Core.Circuit;

/// <summary>
/// This van's own straight line between drive (flow minus water, as its probes show them) and the warming of the water: a recursive
/// least-squares fit of two figures, slope and what the probes' offsets add to it, with a prior for the first minutes. It knows how
/// unsure it is, which is what lets a small drive say nothing instead of something wrong.
/// </summary>
internal sealed class HeatRatio
{
    /// <summary>How far a first guess of the slope may be off, as a share of it, and the offset between flow and tank probe, kelvin.</summary>
    private const double SlopeShare = 0.45, OffsetK = 2.5;

    /// <summary>The figures may drift (pump, thermostat, stratification): a guess is this much less sure after this long.</summary>
    private const double DriftShare = 0.25, DriftOffsetK = 1, DriftS = 900;

    private readonly double _prior;
    private double _ratio, _offset, _vRatio, _vOffset, _cov;

    /// <summary>Starts from a guess of the slope in 1/s.</summary>
    public HeatRatio(double priorPerS)
    {
        _prior = priorPerS;
        _ratio = priorPerS;
        Widen(1);
    }

    /// <summary>Warming per kelvin of drive, 1/s.</summary>
    public double RatioPerS => _ratio;

    /// <summary>Warming expected at this drive, K/s.</summary>
    public double Expected(double driveK) => (_ratio * driveK) + _offset;

    /// <summary>How unsure that is: variance in (K/s)2.</summary>
    public double Variance(double driveK) => (_vRatio * driveK * driveK) + (2 * _cov * driveK) + _vOffset;

    /// <summary>Learns from one look: the water warmed by so much at this drive, with the variance of the look.</summary>
    public void Learn(double driveK, double riseKPerS, double variance, double stepS)
    {
        var share = stepS / DriftS;
        _vRatio = Math.Min(_vRatio + (Square(DriftShare * _prior) * share), Square(SlopeShare * _prior * 2));
        _vOffset = Math.Min(_vOffset + (Square(DriftOffsetK * _prior) * share), Square(OffsetK * _prior * 2));
        var gainRatio = (_vRatio * driveK) + _cov;
        var gainOffset = (_cov * driveK) + _vOffset;
        var total = Variance(driveK) + variance;
        var off = riseKPerS - Expected(driveK);
        _ratio = Math.Max(0.2 * _prior, _ratio + (gainRatio * off / total));
        _offset += gainOffset * off / total;
        _vRatio -= gainRatio * gainRatio / total;
        _vOffset -= gainOffset * gainOffset / total;
        _cov -= gainRatio * gainOffset / total;
    }

    /// <summary>Something has changed (layers have mixed): the slope falls back to a guess at most, and is known less surely.</summary>
    public void Forget()
    {
        _ratio = Math.Min(_ratio, _prior * 1.3);
        Widen(0.6);
    }

    private void Widen(double share)
    {
        _vRatio = Math.Max(_vRatio, Square(SlopeShare * _prior * share));
        _vOffset = Math.Max(_vOffset, Square(OffsetK * _prior * share));
        _cov = 0;
    }

    private static double Square(double x) => x * x;
}
