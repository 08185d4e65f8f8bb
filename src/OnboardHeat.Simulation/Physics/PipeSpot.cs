namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// The metal under a clip-on probe: between the coolant in the pipe, the air, the tank's port and, after a failure, the
/// spray.
/// </summary>
internal sealed class PipeSpot(PipeSpotTraits traits, double celsius)
{
    /// <summary>
    /// A pipe full of still coolant couples this share as well as one at 5 L/min; an empty one still conducts along its
    /// wall.
    /// </summary>
    private const double StillShare = 0.12, WallWPerK = 0.05;

    public double Celsius { get; private set; } = celsius;

    /// <summary>Coupling of a spray that strikes the metal, W/K.</summary>
    public double SprayWPerK { get; set; }

    public void Step(double stepS, double flowLitresPerMinute, double fill, double coolantCelsius, in SpotPlace place)
    {
        var ratio = flowLitresPerMinute / 5;
        var root = Math.Sqrt(ratio);
        var coolant = (traits.FlowCouplingWPerK * ((root * Math.Sqrt(root)) + (StillShare * fill))) + WallWPerK;
        var air = traits.AirCouplingWPerK * place.WindFactor;
        var sum = coolant + air + traits.TankCouplingWPerK + SprayWPerK;
        var drive = (coolant * coolantCelsius) + (air * place.AirCelsius)
            + (traits.TankCouplingWPerK * place.TankCelsius)
            + (SprayWPerK * place.SprayCelsius);
        Celsius = ((traits.CapacityJPerK * Celsius) + (drive * stepS)) / (traits.CapacityJPerK + (sum * stepS));
    }
}
