namespace OnboardHeat.Core.Shower;

/// <summary>How a shower is taken in this van.</summary>
public sealed record ShowerDescription
{
    /// <summary>Temperature of the mixed water, degrees Celsius, 25 to 60; default 39.</summary>
    public double MixedCelsius { get; init; } = 39;

    /// <summary>Flow of mixed water in litres per minute, 0.1 to 30; default 6.</summary>
    public double FlowLitresPerMinute { get; init; } = 6;

    /// <summary>Minutes that make a useful shower, 0.5 to 60; default 5.</summary>
    public double UsefulMinutes { get; init; } = 5;

    /// <summary>
    /// Temperature of the top below which the water counts as no longer usable, degrees Celsius, 25 to 70; default 40.
    /// </summary>
    public double UsableTopCelsius { get; init; } = 40;

    /// <summary>The usable limit in force: never under the mixed temperature plus one kelvin.</summary>
    public double EffectiveUsableTopCelsius => Math.Max(UsableTopCelsius, MixedCelsius + 1);
}
