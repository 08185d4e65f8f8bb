using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// Spray and steam warm the air by the tank by kelvins within seconds. A door, a fan or the sun moves it by two or
/// three kelvin at the most in that time; a blower can do more, so this sign decides alone only at what no blower
/// makes.
/// </summary>
internal sealed class AirSign : ICircuitSign
{
    private const double WindowS = 24;

    /// <summary>Coolant must be so much hotter than the air was, kelvin, to warm it.</summary>
    private const double HotterK = 20;

    /// <summary>Rise that innocent air makes, kelvin in the window, and what each kelvin more says.</summary>
    private const double OrdinaryRiseK = 0.6, NatsPerK = 1.5, LimitNats = 8.2;

    /// <summary>So much in a minute is more than a blower makes of a locker's air: then the sign may decide.</summary>
    private const double SprayRiseK = 12, SprayWindowS = 60, SprayNats = 8.5;

    private Rise _rise;

    public string Name => "air-rise";

    public bool IsHealthy { get; private set; }

    public double StoppedNats { get; private set; }

    public double LeavingNats => StoppedNats;

    public void Observe(Loop loop)
    {
        StoppedNats = 0;
        IsHealthy = Rise.TryRead(loop, loop.Air, WindowS, out _rise);
        if (!IsHealthy || loop.HottestCelsius - _rise.LowestCelsius < HotterK)
        {
            return;
        }

        StoppedNats = Math.Clamp((_rise.K - OrdinaryRiseK) * NatsPerK, 0, LimitNats);
        if (Rise.TryRead(loop, loop.Air, SprayWindowS, out var minute) && minute.K > SprayRiseK && _rise.K > 0)
        {
            StoppedNats = SprayNats;
            _rise = minute;
        }
    }

    public string Words(Loop loop) =>
        string.Create(CultureInfo.InvariantCulture, $"air by the tank +{_rise.K:0.0} K in {_rise.WindowS:0} s");
}
