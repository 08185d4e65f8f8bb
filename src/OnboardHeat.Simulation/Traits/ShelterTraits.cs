namespace OnboardHeat.Simulation;

/// <summary>The space that the tank stands in, and the tray under it. Common practice, no source.</summary>
public sealed record ShelterTraits
{
    /// <summary>Heat capacity of the air and what stands about, J/K.</summary>
    public double CapacityJPerK { get; init; } = 40_000;

    /// <summary>Loss of the space to the open, W/K standing; moving and open doors add to it.</summary>
    public double LossWPerK { get; init; } = 14;

    /// <summary>Share of the cab heater's warmth that reaches it.</summary>
    public double HeaterShare { get; init; } = 0.04;

    /// <summary>Sun on the van at noon, watts into the space.</summary>
    public double SunW { get; init; } = 80;

    /// <summary>Share of the tank's warmth that the surroundings probe sees because it hangs near.</summary>
    public double NearTankShare { get; init; } = 0.03;

    /// <summary>Heat capacity of the tray, J/K.</summary>
    public double TrayJPerK { get; init; } = 2_500;

    /// <summary>Coupling of the tray to the air, W/K.</summary>
    public double TrayWPerK { get; init; } = 4;

    /// <summary>Share of the tray's air that comes from under the floor.</summary>
    public double TrayOutsideShare { get; init; } = 0.3;

    /// <summary>Share of a spray that lands in the tray, 0 (it misses) to 1.</summary>
    public double SprayOnTrayShare { get; init; } = 0.6;

    /// <summary>Share of a spray whose warmth reaches the surroundings probe, 0 to 0.3.</summary>
    public double SprayOnAirShare { get; init; } = 0.08;

    /// <summary>Liquid in the tray that closes the wet contact, litres.</summary>
    public double WetContactLitres { get; init; } = 0.05;

    /// <summary>Time in which a puddle drains or dries, seconds.</summary>
    public double DryingS { get; init; } = 2_400;
}
