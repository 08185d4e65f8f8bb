namespace OnboardHeat.Simulation.Driving;

/// <summary>The tray under the tank: takes what drips or sprays, warms with it, dries again.</summary>
internal sealed class Tray(ShelterTraits traits, double celsius)
{
    /// <summary>Share of a liquid's warmth that it leaves in the tray before it runs off.</summary>
    private const double LeavesShare = 0.5;

    /// <summary>What the tray holds before it runs over, litres.</summary>
    private const double HoldsLitres = 3;

    private double _litres;

    public double Celsius { get; private set; } = celsius;

    /// <summary>Whether the contact in it is wet.</summary>
    public bool IsWet => _litres > traits.WetContactLitres;

    public void Step(double stepS, double shelterCelsius, double outsideCelsius)
    {
        var air = shelterCelsius + (traits.TrayOutsideShare * (outsideCelsius - shelterCelsius));
        var capacity = traits.TrayJPerK + (_litres * 4_000);
        Celsius = ((capacity * Celsius) + (traits.TrayWPerK * stepS * air)) / (capacity + (traits.TrayWPerK * stepS));
        _litres -= _litres * stepS / (traits.DryingS + stepS);
    }

    /// <summary>Liquid lands in it.</summary>
    public void Take(double litres, double celsius)
    {
        var capacity = traits.TrayJPerK + (_litres * 4_000);
        var comes = LeavesShare * litres * 3_700;
        Celsius += comes * (celsius - Celsius) / (capacity + comes);
        _litres = Math.Min(HoldsLitres, _litres + litres);
    }
}
