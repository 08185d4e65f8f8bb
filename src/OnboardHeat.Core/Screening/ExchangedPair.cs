using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Finds two probes that hang in each other's place: the one that physics makes the warmer stays the colder by more than offsets allow.
/// What comes and goes within minutes (slugs, draws, mixing) is no sign of it.
/// </summary>
internal sealed class ExchangedPair(Channel warmer, Channel colder, double byK, double forS)
{
    private double _wrongSinceS = double.NaN;
    private double _rightSinceS = double.NaN;

    public Channel Warmer => warmer;

    public Channel Colder => colder;

    public bool IsExchanged { get; private set; }

    /// <summary>Looks at a scan whose readings were each judged by themselves. True while the two are taken as exchanged.</summary>
    public bool Observe(ScreenedScan scan)
    {
        if (!scan[warmer].IsGood || !scan[colder].IsGood)
        {
            // A reading lost for a moment does not speak for either order.
            return IsExchanged;
        }

        var orderK = scan[warmer].Value - scan[colder].Value;
        var canTell = CanTell(scan);
        Count(ref _wrongSinceS, canTell && orderK <= -byK, scan.ElapsedS);
        Count(ref _rightSinceS, canTell && orderK >= byK, scan.ElapsedS);
        if (scan.ElapsedS - _wrongSinceS >= forS)
        {
            IsExchanged = true;
        }
        else if (scan.ElapsedS - _rightSinceS >= ScreeningPolicy.SwappedBackS)
        {
            IsExchanged = false;
        }

        return IsExchanged;
    }

    private bool CanTell(ScreenedScan scan)
    {
        if (warmer != Channel.Flow)
        {
            return Math.Max(scan[warmer].Value, scan[colder].Value) >= ScreeningPolicy.SwappedTankLeastCelsius;
        }

        // A hot tank warms the coolant of a cold engine: then return is the warmer by right.
        var tank = TankReading.Of(scan);
        return scan[Signal.EngineRunning] != false && tank.Count > 0
            && Math.Min(scan[warmer].Value, scan[colder].Value) >= tank.Warmest + ScreeningPolicy.SwappedLinesAboveTankK;
    }

    private static void Count(ref double sinceS, bool holds, double nowS) =>
        sinceS = !holds ? double.NaN : double.IsNaN(sinceS) ? nowS : sinceS;
}
