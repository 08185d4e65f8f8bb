using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Journeys;

/// <summary>What is added up while one journey is open. Reused for the next: a quiet scan costs no memory.</summary>
internal sealed class JourneyTally(JourneyType type, VanDescription van)
{
    /// <summary>
    /// A loss coefficient is worked out from here on (the spells that a comparison of insulations may rest on).
    /// </summary>
    private const double LongEnoughS = 6 * 3600, WarmEnoughK = 15;

    /// <summary>
    /// Spread of a spell's two ends: probe steps and settling, kelvin of the mean; and of the driving difference: two
    /// probes of the same kind, half a kelvin each by their data sheet, taken as a third of that for one standard
    /// deviation.
    /// </summary>
    private const double EndsK = 0.05, DriveK = 0.24;

    /// <summary>Heat of the tank a kelvin, J/K: only used to carry a start back by a minute.</summary>
    private readonly double _heatJPerK =
        (van.Tank.VolumeLitres * 4_150) + (van.Tank.EffectiveVesselMassKg * Materials.SteelJPerKgK);
    private readonly double[] _overS = new double[van.Circuit.Parts.Count];
    private readonly double[] _overMostK = new double[van.Circuit.Parts.Count];
    private double _startJ;
    private double _startAtS;
    private double _firstProbesCelsius;
    private double _lastProbesCelsius;
    private double _lastJ;
    private double _startCelsius;
    private double _lastCelsius;
    private double _peakCelsius;
    private double _elementJ;
    private double _surroundingsKS;
    private double _surroundingsS;
    private double _flowDriveKS;
    private double _flowGainJ;
    private double _fortyAtS;
    private double _sixtyAtS;
    private int _count;

    /// <summary>Whether it is open.</summary>
    public bool IsOpen { get; private set; }

    public double FromS { get; private set; }

    public double LastS { get; private set; }

    /// <summary>
    /// Opens it at a scan, from a time somewhat before and the heat that was stored then: a change is only seen when it
    /// has gone on for a while.
    /// </summary>
    public void Open(double fromS, double atS, TankEstimate tank, double storedBeforeJ)
    {
        IsOpen = true;
        FromS = fromS;
        LastS = atS;
        _lastJ = tank.StoredJ.Value;
        _lastCelsius = tank.MeanCelsius.Value;
        _startJ = storedBeforeJ;
        _startAtS = atS;
        _startCelsius = _lastCelsius - ((_lastJ - _startJ) / _heatJPerK);
        _peakCelsius = Math.Max(_startCelsius, _lastCelsius);
        (_elementJ, _surroundingsKS, _surroundingsS, _flowDriveKS, _flowGainJ, _count) = (0, 0, 0, 0, 0, 0);
        (_fortyAtS, _sixtyAtS, _firstProbesCelsius, _lastProbesCelsius) =
            (double.NaN, double.NaN, double.NaN, double.NaN);
        Array.Clear(_overS);
        Array.Clear(_overMostK);
    }

    /// <summary>Adds a scan.</summary>
    public void Add(ScreenedScan scan, TankEstimate tank, bool isEngineOn)
    {
        var stepS = scan.ElapsedS - LastS;
        var (storedJ, celsius) = (tank.StoredJ.Value, tank.MeanCelsius.Value);
        if (scan[Signal.ElementOn] == true && !isEngineOn)
        {
            _elementJ += storedJ - _lastJ;
        }

        if (scan[Channel.Surroundings].IsGood)
        {
            _surroundingsKS += scan[Channel.Surroundings].Value * stepS;
            _surroundingsS += stepS;
        }

        if (scan[Channel.Flow].IsGood && isEngineOn)
        {
            _flowDriveKS += (scan[Channel.Flow].Value - celsius) * stepS;
            _flowGainJ += storedJ - _lastJ;
        }

        Cool(scan);
        Rate(scan, stepS);
        _fortyAtS = double.IsNaN(_fortyAtS) && celsius >= 40 ? scan.ElapsedS : _fortyAtS;
        _sixtyAtS = double.IsNaN(_sixtyAtS) && celsius >= 60 ? scan.ElapsedS : _sixtyAtS;
        _peakCelsius = Math.Max(_peakCelsius, celsius);
        (_lastJ, _lastCelsius, LastS) = (storedJ, celsius, scan.ElapsedS);
        _count++;
    }

    /// <summary>Ends it at the last scan added.</summary>
    public Journey Close(int run, FittedSet fitted, JourneyType? asType = null)
    {
        IsOpen = false;
        var isHeating = type == JourneyType.Heating;
        return new Journey
        {
            Type = asType ?? type,
            Run = run,
            FromS = FromS,
            ToS = LastS,
            StartCelsius = _startCelsius,
            EndCelsius = _lastCelsius,
            PeakCelsius = _peakCelsius,
            GainedKWh = (_lastJ - _startJ) / 3.6e6,
            ElementKWh = isHeating && fitted.Has(Signal.ElementOn) ? _elementJ / 3.6e6 : null,
            ToFortyS = isHeating && _startCelsius < 40 && !double.IsNaN(_fortyAtS) ? _fortyAtS - FromS : null,
            ToSixtyS = isHeating && _startCelsius < 60 && !double.IsNaN(_sixtyAtS) ? _sixtyAtS - FromS : null,
            SurroundingsCelsius = _surroundingsS > 0 ? _surroundingsKS / _surroundingsS : null,
            CoilWPerK = isHeating && _flowDriveKS > 600 && _flowGainJ > 0 ? _flowGainJ / _flowDriveKS : null,
            LossWPerK = type == JourneyType.Standing && asType is null ? Loss() : null,
            OverRating = Over(),
        };
    }

    /// <summary>
    /// Keeps the first and the newest mean of the tank's own probes: the estimate learns through a night, they do not.
    /// </summary>
    private void Cool(ScreenedScan scan)
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
            _lastProbesCelsius = sum / count;
            _firstProbesCelsius = double.IsNaN(_firstProbesCelsius) ? _lastProbesCelsius : _firstProbesCelsius;
        }
    }

    private void Rate(ScreenedScan scan, double stepS)
    {
        for (var i = 0; i < _overS.Length; i++)
        {
            var part = van.Circuit.Parts[i];
            var reading = scan[part.On];
            if (reading.IsGood && reading.Value > part.MaxCelsius)
            {
                _overS[i] += stepS;
                _overMostK[i] = Math.Max(_overMostK[i], reading.Value - part.MaxCelsius);
            }
        }
    }

    private Estimate? Loss()
    {
        var spanS = LastS - _startAtS;
        if (spanS < LongEnoughS || _surroundingsS < 0.9 * spanS || double.IsNaN(_firstProbesCelsius))
        {
            return null;
        }

        // The tank's excess over the surroundings as a running mean of its ends would be biased by its bend; the
        // logarithmic mean is the one that an exponential has.
        var surroundings = _surroundingsKS / _surroundingsS;
        var (firstK, lastK) = (_firstProbesCelsius - surroundings, _lastProbesCelsius - surroundings);
        if (firstK < WarmEnoughK || lastK < 1 || lastK >= firstK)
        {
            return null;
        }

        var meanK = firstK - lastK < 0.1 ? firstK : (firstK - lastK) / Math.Log(firstK / lastK);
        var lossWPerK = _heatJPerK * (firstK - lastK) / (meanK * spanS);
        var share = Math.Sqrt(Math.Pow(EndsK * 1.414 / (firstK - lastK), 2) + Math.Pow(DriveK / meanK, 2));
        return new Estimate(lossWPerK, lossWPerK * share, TimeSpan.Zero, _count);
    }

    private List<PartMinutes> Over()
    {
        List<PartMinutes> over = [];
        for (var i = 0; i < _overS.Length; i++)
        {
            if (_overS[i] > 0)
            {
                over.Add(new PartMinutes(van.Circuit.Parts[i].Id, _overS[i] / 60, _overMostK[i]));
            }
        }

        return over;
    }
}
