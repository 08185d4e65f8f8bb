namespace OnboardHeat.Core.Circuit;

/// <summary>
/// A straight line that is learnt as it goes: recursive least squares for slope and offset with a prior, and with a
/// slow doubt that lets it follow a van that changes. It knows how unsure it is, which is what lets a sign say nothing
/// instead of something wrong.
/// </summary>
/// <param name="slope">First guess of the slope.</param>
/// <param name="slopeDeviation">One standard deviation of that guess.</param>
/// <param name="offsetDeviation">One standard deviation of the offset, whose guess is zero.</param>
/// <param name="drift">How much both may wander in <paramref name="driftS"/>: slope first, offset second.</param>
/// <param name="driftS">Seconds for that.</param>
internal sealed class StraightLine(
    double slope, double slopeDeviation, double offsetDeviation, (double Slope, double Offset) drift, double driftS)
{
    private double _offset, _cov;
    private double _vSlope = slopeDeviation * slopeDeviation;
    private double _vOffset = offsetDeviation * offsetDeviation;

    /// <summary>The slope as it is believed now.</summary>
    public double Slope { get; private set; } = slope;

    /// <summary>The value expected at x.</summary>
    public double Expected(double x) => (Slope * x) + _offset;

    /// <summary>How unsure that is, a variance.</summary>
    public double Variance(double x) => (_vSlope * x * x) + (2 * _cov * x) + _vOffset;

    /// <summary>
    /// Learns from one look with its variance. The slope never falls below <paramref name="leastSlope"/>.
    /// </summary>
    public void Learn(double x, double y, double variance, double stepS, double leastSlope = double.NegativeInfinity)
    {
        var share = stepS / driftS;
        _vSlope = Math.Min(_vSlope + (drift.Slope * drift.Slope * share), 4 * slopeDeviation * slopeDeviation);
        _vOffset = Math.Min(_vOffset + (drift.Offset * drift.Offset * share), 4 * offsetDeviation * offsetDeviation);
        var gainSlope = (_vSlope * x) + _cov;
        var gainOffset = (_cov * x) + _vOffset;
        var total = Variance(x) + variance;
        var off = y - Expected(x);
        Slope = Math.Max(leastSlope, Slope + (gainSlope * off / total));
        _offset += gainOffset * off / total;
        _vSlope -= gainSlope * gainSlope / total;
        _vOffset -= gainOffset * gainOffset / total;
        _cov -= gainSlope * gainOffset / total;
    }

    /// <summary>
    /// Something has changed: the slope is at most this now, and both are known no better than this share of the first
    /// guess.
    /// </summary>
    public void Doubt(double mostSlope, double share)
    {
        Slope = Math.Min(Slope, mostSlope);
        _vSlope = Math.Max(_vSlope, share * share * slopeDeviation * slopeDeviation);
        _vOffset = Math.Max(_vOffset, share * share * offsetDeviation * offsetDeviation);
        _cov = 0;
    }
}
