namespace OnboardHeat.Core.Tank;

/// <summary>
/// Day and night of the air by the tank: a mean and one wave of 24 hours, by least squares over what the air probe
/// read, with a prior that a wave of some kelvins is usual. It goes by elapsed time only: where the day stands comes
/// out of the readings, not of a clock.
/// </summary>
internal sealed class AirSwing
{
    private const double RadiansPerS = 2 * Math.PI / 86400;

    /// <summary>
    /// Time between samples, s, and deviation of one about the wave, K: weather and doors last for hours, so each
    /// counts little.
    /// </summary>
    private const double SampleS = 300, SampleK = 1.2;

    /// <summary>Deviation of the wave's two parts before any reading, K, and of the mean, K.</summary>
    private const double WaveK = 3.5, MeanK = 30;

    /// <summary>Time after which an old sample counts e times less, s: three days of weather.</summary>
    private const double ForgetS = 3 * 86400;

    /// <summary>How long a departure from the wave lasts, s.</summary>
    private const double DepartureS = 4 * 3600;

    private readonly double[,] _squares = new double[3, 3];
    private readonly double[] _sums = new double[3];
    private double _sampledS = double.NegativeInfinity;
    private double _mean;
    private double _cos;
    private double _sin;
    private double _last = double.NaN;
    private double _lastS;

    /// <summary>Takes the air at a time. A sample too soon after the last is passed over.</summary>
    public void Observe(double elapsedS, double celsius)
    {
        (_last, _lastS) = (celsius, elapsedS);
        if (elapsedS - _sampledS < SampleS)
        {
            return;
        }

        var keep = double.IsFinite(_sampledS) ? Math.Exp(-(elapsedS - _sampledS) / ForgetS) : 1;
        _sampledS = elapsedS;
        Span<double> at = [1, Math.Cos(RadiansPerS * elapsedS), Math.Sin(RadiansPerS * elapsedS)];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                _squares[i, j] = (_squares[i, j] * keep) + (at[i] * at[j] / (SampleK * SampleK));
            }

            _sums[i] = (_sums[i] * keep) + (at[i] * celsius / (SampleK * SampleK));
        }

        Solve();
    }

    /// <summary>A temperature that <see cref="At"/> never falls below from the last reading on, °C.</summary>
    public double LowestCelsius => double.IsNaN(_last)
        ? EnsemblePrior.AirStandInCelsius
        : _mean - Math.Sqrt((_cos * _cos) + (_sin * _sin)) + Math.Min(0, _last - Wave(_lastS));

    /// <summary>
    /// Air expected at a later time of the run, °C: the wave, and what is left of today's departure from it.
    /// </summary>
    public double At(double elapsedS)
    {
        if (double.IsNaN(_last))
        {
            return EnsemblePrior.AirStandInCelsius;
        }

        var departure = _last - Wave(_lastS);
        return Wave(elapsedS) + (departure * Math.Exp(-(elapsedS - _lastS) / DepartureS));
    }

    private double Wave(double elapsedS) =>
        _mean + (_cos * Math.Cos(RadiansPerS * elapsedS)) + (_sin * Math.Sin(RadiansPerS * elapsedS));

    /// <summary>
    /// Solves the three normal equations with their prior by elimination; the prior keeps them regular.
    /// </summary>
    private void Solve()
    {
        Span<double> a = stackalloc double[9];
        Span<double> b = stackalloc double[3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                a[(3 * i) + j] = _squares[i, j];
            }

            var priorK = i == 0 ? MeanK : WaveK;
            a[4 * i] += 1 / (priorK * priorK);
            b[i] = _sums[i] + (i == 0 ? EnsemblePrior.AirStandInCelsius / (MeanK * MeanK) : 0);
        }

        for (var i = 0; i < 3; i++)
        {
            for (var row = i + 1; row < 3; row++)
            {
                var factor = a[(3 * row) + i] / a[4 * i];
                for (var j = i; j < 3; j++)
                {
                    a[(3 * row) + j] -= factor * a[(3 * i) + j];
                }

                b[row] -= factor * b[i];
            }
        }

        _sin = b[2] / a[8];
        _cos = (b[1] - (a[5] * _sin)) / a[4];
        _mean = (b[0] - (a[1] * _cos) - (a[2] * _sin)) / a[0];
    }
}
