namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// A wax thermostat: its wax follows the coolant late, and it closes some kelvin lower than it opens.
/// </summary>
internal sealed class Thermostat(EngineTraits traits, double celsius)
{
    private double _waxCelsius = celsius;
    private double _lift;

    /// <summary>Opening at which it is stuck; null while it works.</summary>
    public double? StuckShare { get; set; }

    /// <summary>Opening, 0 to 1, after a step beside coolant of this temperature.</summary>
    public double Open(double stepS, double coolantCelsius)
    {
        _waxCelsius += (coolantCelsius - _waxCelsius) * stepS / (traits.WaxLagS + stepS);
        var opening = Curve(_waxCelsius, traits.ThermostatCelsius);
        var closing = Curve(_waxCelsius, traits.ThermostatCelsius - traits.HysteresisK);
        _lift = Math.Clamp(_lift, opening, closing);
        return StuckShare ?? Math.Max(traits.ThermostatLeakShare, _lift);
    }

    private double Curve(double wax, double beginCelsius) =>
        Math.Clamp((wax - beginCelsius) / traits.ThermostatSpanK, 0, 1);
}
