using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Circuit;

/// <summary>
/// How one line of this van cools: full of still coolant as it does at every stop, which is learnt from stop to stop,
/// and bared, which is known from the full one: the same pipe without the heat of its coolant cools three to five times
/// faster.
/// </summary>
internal sealed class PipeDecay(double priorTauS, Estimate? learnt)
{
    /// <summary>
    /// Spread of full pipes from van to van, natural log (recorded stops: 660 to 5,700 s), and of one van from stop to
    /// stop.
    /// </summary>
    private const double VanSpread = 0.48, StopSpread = 0.17;

    /// <summary>
    /// A bared pipe: how much faster, natural log of a factor of four, its spread; and its time constant in an unknown
    /// van, seconds.
    /// </summary>
    private const double BareFaster = 1.39, BareFasterSpread = 0.42, BareTauS = 480, BareSpread = 0.45;

    /// <summary>Share of stops in which a line cools as it never does again (a fan, a slug of cold coolant).</summary>
    private const double OddStop = 0.2;

    /// <summary>One line's word is bounded: its probe may sit oddly.</summary>
    private const double LimitNats = 4.5;

    private double _logRate = learnt is { Value: > 0 } known ? Math.Log(known.Value) : -Math.Log(priorTauS);
    private int _stops = learnt?.Count ?? 0;

    /// <summary>Rate at which the full line cools as far as is known, per second and kelvin above the air.</summary>
    public double FullPerS => Math.Exp(_logRate);

    /// <summary>Stops it has learnt from.</summary>
    public int Stops => _stops;

    /// <summary>
    /// Rate at which the full line cools, per second and kelvin above the air, for keeping; null before the first stop.
    /// </summary>
    public Estimate? Learnt =>
        _stops == 0 ? null : new Estimate(Math.Exp(_logRate), Math.Exp(_logRate) * Spread, TimeSpan.Zero, _stops);

    private double Spread => _stops == 0 ? VanSpread : StopSpread * Math.Sqrt(1 + (1.0 / _stops));

    /// <summary>Learns from one stop that was in order.</summary>
    public void Learn(double ratePerS)
    {
        _stops = Math.Min(_stops + 1, 20);
        var share = _stops == 1 ? 1 : Math.Max(0.15, 1.0 / _stops);
        _logRate += share * (Math.Log(Math.Max(ratePerS, 1e-5)) - _logRate);
    }

    /// <summary>Nats for a bared pipe against a full one, from how fast it cools and the deviation of that.</summary>
    public double Leaving(double ratePerS, double deviationPerS)
    {
        var rate = Math.Max(ratePerS, 1 / 20000.0);
        var log = Math.Log(rate);
        var blur = Math.Min(1, deviationPerS / rate);
        var full = Density(log - _logRate, Spread, blur);
        var bare = BareDensity(log + Math.Log(BareTauS), BareSpread, blur);
        if (_stops > 0)
        {
            // A stop may have been an odd one, so that what any van does keeps a say beside what this one did.
            full = ((1 - OddStop) * full) + (OddStop * Density(log + Math.Log(priorTauS), VanSpread, blur));
            bare = (0.5 * bare) + (0.5 * BareDensity(log - _logRate - BareFaster, BareFasterSpread, blur));
        }

        return Math.Clamp(Math.Log(bare / full), -LimitNats, LimitNats);
    }

    private static double Density(double off, double spread, double blur)
    {
        var variance = (spread * spread) + (blur * blur);
        return (Math.Exp(-off * off / (2 * variance)) / Math.Sqrt(variance)) + 1e-9;
    }

    /// <summary>Faster than bared is bared all the more: only what is slower speaks against it.</summary>
    private static double BareDensity(double off, double spread, double blur) =>
        Density(Math.Min(0, off), spread, blur);
}
