using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Finds two probes that hang in each other's place: the one that physics makes the warmer stays the colder by more
/// than offsets allow. What comes and goes within minutes (slugs, draws, mixing) is no sign of it, nor is what begins
/// in the middle of a run after the right order was seen: nobody exchanges probes on the road.
/// </summary>
internal sealed class ExchangedPair(Channel warmer, Channel colder, double byK, double forS)
{
    private readonly CoilChill? _chill = warmer == Channel.Flow ? null : new CoilChill(warmer, colder);
    private double _wrongSinceS = double.NaN;
    private double _rightSinceS = double.NaN;
    private double _steppedAtS = double.NegativeInfinity;
    private double _tankThen;
    private double _linesThen;

    public Channel Warmer => warmer;

    public Channel Colder => colder;

    public bool IsExchanged { get; private set; }

    /// <summary>Whether the right order was seen for long enough in this run.</summary>
    public bool WasInOrder { get; private set; }

    /// <summary>
    /// Looks at a scan whose readings were each judged by themselves. True while the two are taken as exchanged.
    /// </summary>
    public bool Observe(ScreenedScan scan)
    {
        if (!scan[warmer].IsGood || !scan[colder].IsGood)
        {
            // A reading lost for a moment speaks for neither order; a jump speaks for a bad contact, and what follows
            // is not believed.
            if (scan[warmer].Fault == ReadingFault.ImplausibleStep
                || scan[colder].Fault == ReadingFault.ImplausibleStep)
            {
                _steppedAtS = scan.ElapsedS;
            }

            return IsExchanged;
        }

        if (_chill?.IsUpperTheLower(scan) is { } isWrong)
        {
            WasInOrder |= !isWrong;
            IsExchanged = !WasInOrder && isWrong;
        }

        var nowS = scan.ElapsedS;
        var orderK = scan[warmer].Value - scan[colder].Value;
        var tank = TankReading.Of(scan);
        var linesSum = scan[warmer].Value + scan[colder].Value;
        var canTell = CanTell(scan, tank) && nowS - _steppedAtS > ScreeningPolicy.SwappedAfterStepS;
        Count(ref _wrongSinceS, canTell && orderK <= -byK && !WasInOrder, tank.Mean, linesSum, nowS);
        Count(ref _rightSinceS, canTell && orderK >= byK, tank.Mean, linesSum, nowS);
        if (nowS - _wrongSinceS >= forS)
        {
            IsExchanged |= warmer != Channel.Flow || IsHeating(scan, tank);
            _wrongSinceS = double.NaN;
        }
        else if (nowS - _rightSinceS >= ScreeningPolicy.SwappedBackS)
        {
            IsExchanged = false;
            WasInOrder = true;
        }

        return IsExchanged;
    }

    private bool CanTell(ScreenedScan scan, TankReading tank)
    {
        if (warmer != Channel.Flow)
        {
            return Math.Max(scan[warmer].Value, scan[colder].Value) >= ScreeningPolicy.SwappedTankLeastCelsius;
        }

        // A hot tank warms the coolant of a cold engine: then return is the warmer by right.
        return scan[Signal.EngineRunning] != false && tank.Count > 0
            && Math.Min(scan[warmer].Value, scan[colder].Value) >= tank.Warmest
            + ScreeningPolicy.SwappedLinesAboveTankK;
    }

    private void Count(ref double sinceS, bool holds, double tankMean, double linesSum, double nowS)
    {
        if (!holds)
        {
            sinceS = double.NaN;
        }
        else if (double.IsNaN(sinceS))
        {
            sinceS = nowS;
            _tankThen = tankMean;
            _linesThen = linesSum;
        }
    }

    /// <summary>
    /// Coolant passes and gives heat: the tank has gained, and the lines have not cooled meanwhile as standing ones do.
    /// </summary>
    private bool IsHeating(ScreenedScan scan, TankReading tank) =>
        tank.Mean - _tankThen >= ScreeningPolicy.SwappedTankGainK
        && scan[warmer].Value + scan[colder].Value > _linesThen - (2 * ScreeningPolicy.SwappedLinesCoolK);
}
