namespace OnboardHeat.Simulation;

/// <summary>One probe as it is fitted.</summary>
/// <param name="OffsetK">
/// Error of the probe, kelvin: within 0.5 by its data sheet at -10 to 85 °C, in practice up to 0.8.
/// </param>
/// <param name="LagS">First-order lag of the probe in its place, seconds, 2 to 60.</param>
/// <param name="ShowsShare">
/// Share of the difference to the air that it shows, 0.9 to 1 (it sits on the wall, not in the water).
/// </param>
/// <param name="NoiseK">Noise before rounding, kelvin (one standard deviation).</param>
public readonly record struct ProbeTraits(double OffsetK, double LagS, double ShowsShare, double NoiseK)
{
    /// <summary>A probe without fault of its own.</summary>
    public static ProbeTraits Plain { get; } = new(0, 8, 1, 0.02);
}
