namespace OnboardHeat.Simulation;

/// <summary>One hose between engine and tank.</summary>
public sealed record LineTraits
{
    /// <summary>Length, metres: the engine is in front, the tank behind.</summary>
    public double LengthM { get; init; } = 5;

    /// <summary>Coolant in it, litres: 0.2 a metre for a 16 mm bore.</summary>
    public double VolumeLitres { get; init; } = 1.0;

    /// <summary>Heat capacity of the wall, J/(m K): some 0.35 kg of rubber a metre at 1.7 kJ/(kg K).</summary>
    public double WallJPerMK { get; init; } = 600;

    /// <summary>
    /// Loss to still air, W/(m K): 0.4 lagged to 1.2 bare (a film of 10 W/(m2 K) on 25 mm). Full and still, such a hose
    /// then cools with a time constant of 15 to 45 minutes.
    /// </summary>
    public double LossWPerMK { get; init; } = 0.7;
}
