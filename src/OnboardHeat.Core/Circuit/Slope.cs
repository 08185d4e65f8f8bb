namespace OnboardHeat.Core.Circuit;

/// <summary>A straight line through a window of readings.</summary>
/// <param name="KPerS">Rise, kelvin per second; falling is negative.</param>
/// <param name="Celsius">Mean of the window, degrees Celsius.</param>
/// <param name="DeviationKPerS">
/// One standard deviation of the rise from the probe's own noise, kelvin per second.
/// </param>
/// <param name="SpanS">Seconds from the first to the last reading used.</param>
internal readonly record struct Slope(double KPerS, double Celsius, double DeviationKPerS, double SpanS);
