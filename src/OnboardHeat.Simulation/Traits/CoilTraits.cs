namespace OnboardHeat.Simulation;

/// <summary>The coil in the tank.</summary>
public sealed record CoilTraits
{
    /// <summary>
    /// Conductance at 5 L/min and 35 K of drive, W/K: 30 to 60 in a tank of about 20 litres (common practice, no
    /// source).
    /// </summary>
    public double ConductanceWPerK { get; init; } = 45;

    /// <summary>Coolant in the coil, litres.</summary>
    public double VolumeLitres { get; init; } = 0.5;

    /// <summary>Lower end, a share of the tank's height.</summary>
    public double FromHeightShare { get; init; } = 0.03;

    /// <summary>Upper end, a share of the tank's height.</summary>
    public double ToHeightShare { get; init; } = 0.55;

    /// <summary>Whether the flow line ends in the upper port.</summary>
    public bool IsFedFromTop { get; init; } = true;
}
