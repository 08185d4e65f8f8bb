using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// A stretch in which a tank stands and cools, followed by its own probes: the estimate learns through a night, they do
/// not.
/// </summary>
internal sealed class CoolingStretch(double heatJPerK)
{
    /// <summary>
    /// A loss coefficient is worked out from here on (the spells that a comparison of insulations may rest on).
    /// </summary>
    public const double LongEnoughS = 6 * 3600, WarmEnoughK = 15;

    /// <summary>The surroundings must be known for nearly all of it, as a share.</summary>
    private const double KnownShare = 0.9;

    /// <summary>
    /// Spread of a spell's two ends: probe steps and settling, kelvin of the mean; and of the driving difference: two
    /// probes of the same kind, half a kelvin each by their data sheet, taken as a third of that for one standard
    /// deviation.
    /// </summary>
    private const double EndsK = 0.05, DriveK = 0.24;

    private double _firstCelsius;
    private double _lastCelsius;
    private double _surroundingsKS;
    private double _surroundingsS;
    private int _count;

    /// <summary>Its length, seconds.</summary>
    public double SpanS { get; private set; }

    /// <summary>Water at the top above that at the bottom at its start, kelvin.</summary>
    public double StartLayersK { get; private set; }

    /// <summary>Tank above its surroundings at the start, kelvin; null when one of them is not known.</summary>
    public double? StartExcessK =>
        _surroundingsS > 0 && !double.IsNaN(_firstCelsius) ? _firstCelsius - (_surroundingsKS / _surroundingsS) : null;

    public void Begin()
    {
        (_firstCelsius, _lastCelsius) = (double.NaN, double.NaN);
        (_surroundingsKS, _surroundingsS, SpanS, StartLayersK, _count) = (0, 0, 0, 0, 0);
    }

    public void Add(ScreenedScan scan, TankEstimate tank, double stepS)
    {
        if (_count++ == 0)
        {
            StartLayersK = LayersK(scan, tank);
        }

        SpanS += stepS;
        if (scan[Channel.Surroundings].IsGood)
        {
            _surroundingsKS += scan[Channel.Surroundings].Value * stepS;
            _surroundingsS += stepS;
        }

        Probes(scan);
    }

    /// <summary>
    /// Watts per kelvin; null when the stretch is too short, too cool or its surroundings are not known.
    /// </summary>
    public Estimate? LossWPerK()
    {
        if (SpanS < LongEnoughS || _surroundingsS < KnownShare * SpanS || double.IsNaN(_firstCelsius))
        {
            return null;
        }

        // The tank's excess over the surroundings as a running mean of its ends would be biased by its bend; the
        // logarithmic mean is the one that an exponential has.
        var surroundings = _surroundingsKS / _surroundingsS;
        var (firstK, lastK) = (_firstCelsius - surroundings, _lastCelsius - surroundings);
        if (firstK < WarmEnoughK || lastK < 1 || lastK >= firstK)
        {
            return null;
        }

        var meanK = firstK - lastK < 0.1 ? firstK : (firstK - lastK) / Math.Log(firstK / lastK);
        var lossWPerK = heatJPerK * (firstK - lastK) / (meanK * SpanS);
        var share = Math.Sqrt(Math.Pow(EndsK * 1.414 / (firstK - lastK), 2) + Math.Pow(DriveK / meanK, 2));
        return new Estimate(lossWPerK, lossWPerK * share, TimeSpan.Zero, _count);
    }

    /// <summary>
    /// By the probes where both are there: after a drive the estimate is slow to believe that all is mixed.
    /// </summary>
    private static double LayersK(ScreenedScan scan, TankEstimate tank)
    {
        var (top, bottom) = (scan[Channel.TankTop], scan[Channel.TankBottom]);
        return top.IsGood && bottom.IsGood
            ? top.Value - bottom.Value
            : tank.TopCelsius.Value - tank.BottomCelsius.Value;
    }

    private void Probes(ScreenedScan scan)
    {
        var (sum, count) = (0.0, 0);
        foreach (var channel in Channels.OfTank)
        {
            if (scan[channel].IsGood)
            {
                sum += scan[channel].Value;
                count++;
            }
        }

        if (count > 0)
        {
            _lastCelsius = sum / count;
            _firstCelsius = double.IsNaN(_firstCelsius) ? _lastCelsius : _firstCelsius;
        }
    }
}
