namespace OnboardHeat.Engine.Pictures;

/// <summary>A figure that is not known exactly. The unit stands in the key that holds it.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Deviation">One standard deviation, same unit; a wide one says that little is known.</param>
public sealed record EstimateForm(double? Value, double? Deviation);
