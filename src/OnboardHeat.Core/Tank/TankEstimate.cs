using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>What is known of the tank after a scan.</summary>
public sealed record TankEstimate
{
    /// <summary>Nothing is known.</summary>
    public static TankEstimate Unknown { get; } = new();

    /// <summary>Whether there is an estimate at all. False: the other members say nothing.</summary>
    public bool IsKnown { get; init; }

    /// <summary>Whether a person said that the tank is drained: no energy, no minutes.</summary>
    public bool IsDrained { get; init; }

    /// <summary>
    /// Water temperature of each layer in degrees Celsius, equal volumes, bottom first; empty when unknown.
    /// </summary>
    public IReadOnlyList<double> LayerCelsius { get; init; } = [];

    /// <summary>Water at the top, degrees Celsius.</summary>
    public Estimate TopCelsius { get; init; }

    /// <summary>Mean of the water, degrees Celsius.</summary>
    public Estimate MeanCelsius { get; init; }

    /// <summary>Water at the bottom, degrees Celsius.</summary>
    public Estimate BottomCelsius { get; init; }

    /// <summary>
    /// Heat in water and vessel above the cold supply, joules; negative when the tank is colder than that.
    /// </summary>
    public Estimate StoredJ { get; init; }

    /// <summary>
    /// Heat into the water from coil and element, watts, losses not subtracted; negative when the circuit takes heat
    /// out.
    /// </summary>
    public Estimate HeatingW { get; init; }

    /// <summary>Heat loss per kelvin above the surroundings, watts per kelvin.</summary>
    public Estimate LossWPerK { get; init; }

    /// <summary>Conductance between coolant and tank water, watts per kelvin.</summary>
    public Estimate CoilWPerK { get; init; }

    /// <summary>Whether warm coolant in the coil heats the tank.</summary>
    public bool IsHeatedByCoil { get; init; }

    /// <summary>
    /// Whether a standing tank loses several times what its lagging explains: coolant turns by its own buoyancy.
    /// </summary>
    public bool IsLosingThroughCircuit { get; init; }

    /// <summary>Facts of time and temperature that bear on hygiene.</summary>
    public HygieneFacts Hygiene { get; init; }

    /// <summary>Air by the tank as the estimate takes it, degrees Celsius.</summary>
    public Estimate SurroundingsCelsius { get; init; }
}
