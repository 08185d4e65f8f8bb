namespace OnboardHeat.Core.Circuit;

/// <summary>
/// A warm drip in the tray: with hot coolant in the lines the tray leaves the air it has followed all along, by a
/// kelvin or two within minutes, and stays above it. The sun and a heater warm tray and air alike, an opened door cools
/// the air first, and either goes on from before; a drip begins.
/// </summary>
internal sealed class Drip
{
    /// <summary>
    /// Means over this, seconds, taken now, so long ago, and as long before that: what went on before is no beginning.
    /// </summary>
    private const double MeanS = 20, ApartS = 120;

    /// <summary>
    /// Rise beyond air and trend that is no chance, kelvin. In 60 hours of recorded innocent drives and nights the tray
    /// gained at most 0.7 K on the air in two minutes where nothing was spilt.
    /// </summary>
    private const double BeginsK = 0.85;

    /// <summary>
    /// It must stay above this share of it for so long, seconds: a splash from outside dries, a door closes.
    /// </summary>
    private const double StaysShare = 0.6, StaysForS = 90;

    /// <summary>Coolant must be so much hotter than the tray, kelvin.</summary>
    private const double HotterK = 25;

    /// <summary>
    /// A drip warms no tray by more than this, kelvin: that is a spill or a spout, and other alarms tell it.
    /// </summary>
    private const double MostK = 8;

    /// <summary>
    /// The bottom of the tank has fallen by so much in so long, kelvin and seconds: water is drawn, and may be what is
    /// warm.
    /// </summary>
    private const double DrawnK = 2, DrawnS = 240;

    private double _beganS = double.NaN;
    private double _baseK, _gainK;

    /// <summary>Whether it drips: it began and has stayed.</summary>
    public bool Holds { get; private set; }

    /// <summary>How far the tray is above where it was before, beyond the air, kelvin.</summary>
    public double GainK { get; private set; }

    /// <summary>Seconds since it began.</summary>
    public double AgeS { get; private set; }

    public void Observe(Loop loop)
    {
        if (!TryMean(loop, loop.Tray, 0, out var tray) || !TryMean(loop, loop.Air, 0, out var air))
        {
            return;
        }

        if (double.IsNaN(_beganS))
        {
            Begin(loop, tray, air);
            return;
        }

        GainK = tray - air - _baseK;
        _gainK = Math.Max(_gainK, GainK);
        AgeS = loop.NowS - _beganS;
        if (_gainK > MostK || GainK < StaysShare * (Holds ? 0.5 : 1) * _gainK)
        {
            (_beganS, Holds) = (double.NaN, false);
            return;
        }

        Holds |= AgeS >= StaysForS;
    }

    private void Begin(Loop loop, double tray, double air)
    {
        if (loop.HottestCelsius - tray < HotterK
            || !TryMean(loop, loop.Tray, ApartS, out var trayThen) || !TryMean(loop, loop.Air, ApartS, out var airThen)
            || !TryMean(loop, loop.Tray, 2 * ApartS, out var trayBefore) || IsDrawn(loop))
        {
            return;
        }

        var gain = tray - trayThen - Math.Max(0, air - airThen) - Math.Max(0, trayThen - trayBefore);
        if (gain >= BeginsK)
        {
            (_beganS, _baseK, _gainK) = (loop.NowS, trayThen - airThen, tray - air - trayThen + airThen);
        }
    }

    private static bool IsDrawn(Loop loop) =>
        loop.IsFresh(loop.Bottom) && loop.Bottom.TryRange(loop.NowS - DrawnS, loop.NowS, out _, out var highest)
        && highest - loop.Bottom.Newest > DrawnK;

    private static bool TryMean(Loop loop, Trace trace, double agoS, out double celsius)
    {
        var found = loop.TrySlope(trace, MeanS, out var slope, agoS);
        celsius = slope.Celsius;
        return found;
    }
}
