using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// A line that reads what no coolant can be while the coil goes on warming the tank: colder than the coldest water of a
/// tank that gains heat, or a flow far below its own return. It finds the probe that slipped off slowly, or hung in the
/// air from the start.
/// </summary>
internal sealed class HeatingContradiction(Channel line)
{
    private double _sinceS = double.NaN;
    private double _tankThen;

    public void Forget() => _sinceS = double.NaN;

    /// <summary>True when the contradiction has lasted, and the tank has gained heat all along.</summary>
    public bool Observe(
        ScreenedScan scan, double own, double partner, TankReading tank, double airCelsius, bool wasInOrder)
    {
        if (!IsImpossible(own, partner, tank, airCelsius, wasInOrder) || scan[Signal.ElementOn] == true)
        {
            Forget();
            return false;
        }

        var nowS = scan.ElapsedS;
        if (double.IsNaN(_sinceS))
        {
            _sinceS = nowS;
            _tankThen = tank.Mean;
        }

        if (nowS - _sinceS < ScreeningPolicy.LooseSlowS)
        {
            return false;
        }

        // No gain, no proof that coolant passes: a fresh window, because a slow drift over an hour is no proof either.
        _sinceS = nowS;
        var gainedK = tank.Mean - _tankThen;
        _tankThen = tank.Mean;
        return gainedK >= ScreeningPolicy.LooseTankGainK;
    }

    private bool IsImpossible(double own, double partner, TankReading tank, double airCelsius, bool wasInOrder)
    {
        if (tank.Count == 0 || partner < tank.Warmest + ScreeningPolicy.LoosePartnerAboveTankK)
        {
            return false;
        }

        var isBelowTank = own < tank.Coldest - ClipOnMarginK(tank.Coldest, airCelsius);
        var isBelowReturn = line == Channel.Flow && wasInOrder
            && own < partner - (2 * ClipOnMarginK(partner, airCelsius));
        return isBelowTank || isBelowReturn;
    }

    private static double ClipOnMarginK(double celsius, double airCelsius) => ScreeningPolicy.LooseClipOnK
        + (ScreeningPolicy.LooseClipOnShare * Math.Max(0, celsius - airCelsius));
}
