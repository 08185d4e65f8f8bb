namespace OnboardHeat.Engine.Options;

/// <summary>How a shower is taken in this van.</summary>
public sealed class ShowerOptions
{
    /// <summary>Temperature of the mixed water, degrees Celsius, 25 to 60; default 39.</summary>
    public double MixedCelsius { get; set; } = 39;

    /// <summary>
    /// Flow of mixed water in litres per minute, 0.1 to 30; default 6. Measure it once with a bucket.
    /// </summary>
    public double FlowLitresPerMinute { get; set; } = 6;

    /// <summary>
    /// Minutes that make a useful shower, 0.5 to 60; default 5. 'Ready' means that so many are there.
    /// </summary>
    public double UsefulMinutes { get; set; } = 5;

    /// <summary>
    /// Top of the tank below which the water counts as no longer usable, degrees Celsius, 25 to 70; default 40. In
    /// force never under the mix + 1 K.
    /// </summary>
    public double UsableTopCelsius { get; set; } = 40;
}
