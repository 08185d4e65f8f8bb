using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Journeys;

/// <summary>What is added up while one journey is open. Reused for the next: a quiet scan costs no memory.</summary>
internal sealed class JourneyTally(JourneyType type, VanDescription van)
{
    private readonly CoolingTally _cooling = new(van.Tank.HeatJPerK);
    private readonly SourceTally _sources = new();
    private readonly RatingTally _ratings = new(van.Circuit.Parts);
    private double _startJ;
    private double _lastJ;
    private double _startCelsius;
    private double _lastCelsius;
    private double _peakCelsius;
    private double _flowDriveKS;
    private double _flowGainJ;
    private double _fortyAtS;
    private double _sixtyAtS;

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
        _startCelsius = _lastCelsius - ((_lastJ - _startJ) / van.Tank.HeatJPerK);
        _peakCelsius = Math.Max(_startCelsius, _lastCelsius);
        (_flowDriveKS, _flowGainJ, _fortyAtS, _sixtyAtS) = (0, 0, double.NaN, double.NaN);
        _cooling.Begin();
        _sources.Begin(_lastJ - _startJ);
        _ratings.Begin();
    }

    /// <summary>Adds a scan.</summary>
    public void Add(ScreenedScan scan, TankEstimate tank, bool isEngineOn)
    {
        var stepS = scan.ElapsedS - LastS;
        var (storedJ, celsius) = (tank.StoredJ.Value, tank.MeanCelsius.Value);
        _sources.Add(isEngineOn, scan[Signal.ElementOn] == true, stepS, storedJ - _lastJ);
        _cooling.Add(scan, tank, stepS);
        _ratings.Add(scan, stepS);
        if (scan[Channel.Flow].IsGood && isEngineOn)
        {
            _flowDriveKS += (scan[Channel.Flow].Value - celsius) * stepS;
            _flowGainJ += storedJ - _lastJ;
        }

        _fortyAtS = double.IsNaN(_fortyAtS) && celsius >= 40 ? scan.ElapsedS : _fortyAtS;
        _sixtyAtS = double.IsNaN(_sixtyAtS) && celsius >= 60 ? scan.ElapsedS : _sixtyAtS;
        _peakCelsius = Math.Max(_peakCelsius, celsius);
        (_lastJ, _lastCelsius, LastS) = (storedJ, celsius, scan.ElapsedS);
    }

    /// <summary>Ends it at the last scan added.</summary>
    public Journey Close(int run, FittedSet fitted, JourneyEnd end, JourneyType? asType = null)
    {
        IsOpen = false;
        var isHeating = type == JourneyType.Heating;
        var isStanding = type == JourneyType.Standing && asType is null;
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
            BySource = isHeating ? _sources.Result(fitted) : [],
            ToFortyS = isHeating && _startCelsius < 40 && !double.IsNaN(_fortyAtS) ? _fortyAtS - FromS : null,
            ToSixtyS = isHeating && _startCelsius < 60 && !double.IsNaN(_sixtyAtS) ? _sixtyAtS - FromS : null,
            SurroundingsCelsius = _cooling.SurroundingsCelsius,
            CoilWPerK = isHeating && _flowDriveKS > 600 && _flowGainJ > 0 ? _flowGainJ / _flowDriveKS : null,
            LossWPerK = isStanding ? _cooling.Stretch.LossWPerK() : null,
            StartExcessK = isStanding ? _cooling.Stretch.StartExcessK : null,
            StartLayersK = isStanding ? _cooling.Stretch.StartLayersK : 0,
            JudgedS = isStanding ? _cooling.Stretch.SpanS : 0,
            ValvesOpenShare = isStanding ? _cooling.ValvesOpenShare : null,
            CirculatedShare = isStanding ? _cooling.CirculatedShare : 0,
            OverRating = _ratings.Result(),
            EndedBy = end,
        };
    }
}
