namespace OnboardHeat.Engine.Imports;

/// <summary>One reading of a logger.</summary>
/// <param name="Target">Name of the channel or signal.</param>
/// <param name="Value">Degrees Celsius; 0 or 1 for a signal.</param>
internal readonly record struct ForeignReading(string Target, double Value);
