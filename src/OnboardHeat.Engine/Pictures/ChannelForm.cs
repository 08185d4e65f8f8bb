namespace OnboardHeat.Engine.Pictures;

/// <summary>One channel after screening.</summary>
/// <param name="Celsius">Temperature last believed, degrees Celsius; null if none ever was.</param>
/// <param name="Fault">
/// Why this scan's reading is not believed (<c>missing</c>, <c>bad-crc</c>, ...); null when it is.
/// </param>
/// <param name="AgeS">Seconds since a reading was last believed, zero when this one is; null if none ever was.</param>
public sealed record ChannelForm(double? Celsius, string? Fault, double? AgeS);
