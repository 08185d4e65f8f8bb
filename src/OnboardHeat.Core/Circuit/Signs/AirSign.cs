using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Spray and steam warm the air by the tank by kelvins within seconds. A door, a fan or the sun moves it by two or three kelvin at the
/// most in that time; a blower can do more, so this sign never decides alone.
/// </summary>
internal sealed class AirSign : ICircuitSign
{
    private const double WindowS = 24;

    /// <summary>Rise that innocent air makes, kelvin in the window, and what each kelvin more says.</summary>
    private const double OrdinaryRiseK = 0.6, NatsPerK = 1.5, LimitNats = 7;

    /// <summary>So much in a minute is more than a blower makes of a locker's air: then the sign may decide.</summary>
    private const double SprayRiseK = 12, SprayWindowS = 60, SprayNats = 8.5;

    private double _riseK;

    public string Name => "air-rise";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => StoppedNats;

    public double RiseK => _riseK;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        _riseK = 0;
        IsHealthy = loop.IsFresh(loop.Air) && loop.Air.TryRange(loop.NowS - loop.Window(WindowS), loop.NowS, out var lowest, out _);
        if (!IsHealthy)
        {
            return;
        }

        loop.Air.TryRange(loop.NowS - loop.Window(WindowS), loop.NowS, out lowest, out _);
        _riseK = loop.Air.Newest - lowest;
        if (loop.HottestCelsius - lowest > 20)
        {
            StoppedNats = Math.Clamp((_riseK - OrdinaryRiseK) * NatsPerK, 0, LimitNats);
            if (loop.Air.TryRange(loop.NowS - SprayWindowS, loop.NowS, out var before, out _) && loop.Air.Newest - before > SprayRiseK)
            {
                StoppedNats = SprayNats;
            }
        }
    }

    public string Words(Loop loop) => string.Create(CultureInfo.InvariantCulture, $"air by the tank +{_riseK:0.0} K in {loop.Window(WindowS):0} s");
}
