namespace OnboardHeat.Simulation;

/// <summary>
/// The tank of one simulated van. Ranges are common practice for small lagged calorifiers, no source, unless said.
/// </summary>
public sealed record TankTraits
{
    /// <summary>Water content, 10 to 40 litres.</summary>
    public double VolumeLitres { get; init; } = 24;

    /// <summary>Mass of the steel vessel, kilograms (2 + 0.14 a litre is usual).</summary>
    public double SteelKg { get; init; } = 5.4;

    /// <summary>Height inside, metres.</summary>
    public double HeightM { get; init; } = 0.42;

    /// <summary>Number of layers the model keeps, 8 to 20: the more, the sharper the boundary a draw leaves.</summary>
    public int LayerCount { get; init; } = 12;

    /// <summary>Loss coefficient at 40 K above the surroundings, W/K: 0.5 to 1 for about 20 litres.</summary>
    public double LossWPerK { get; init; } = 0.8;

    /// <summary>How much the loss coefficient grows from 40 K to 80 K, a share of it.</summary>
    public double LossRiseShare { get; init; } = 0.04;

    /// <summary>Extra weight of the top layer in the loss, for pipes and fittings.</summary>
    public double FittingsShare { get; init; } = 1;

    /// <summary>Conduction down the tank, W/(m K): water 0.6, the steel wall and slow eddies on top of it.</summary>
    public double ConductionWPerMK { get; init; } = 1.3;

    /// <summary>How many times the conduction grows while the van travels and shakes the water.</summary>
    public double TravelFactor { get; init; } = 4;

    /// <summary>Seconds that warm water needs to rise and mix into what lies above it.</summary>
    public double RisingS { get; init; } = 8;

    /// <summary>
    /// How strongly an entering draw stirs the lowest layers: layers mixed for each layer's volume that enters.
    /// </summary>
    public double StirringShare { get; init; } = 0.6;

    /// <summary>How far up the stirring reaches, a share of the height.</summary>
    public double StirringDepthShare { get; init; } = 0.4;

    /// <summary>Cold water that enters, degrees Celsius.</summary>
    public double ColdCelsius { get; init; } = 12;

    /// <summary>Power of the electric element, watts.</summary>
    public double ElementW { get; init; } = 350;

    /// <summary>Where the element sits, a share of the height.</summary>
    public double ElementHeightShare { get; init; } = 0.2;

    /// <summary>Temperature at its height at which the element's own thermostat opens, degrees Celsius.</summary>
    public double ElementCelsius { get; init; } = 62;
}
