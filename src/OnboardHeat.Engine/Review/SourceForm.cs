namespace OnboardHeat.Engine.Review;

/// <summary>What one source gave, in its public form.</summary>
/// <param name="Source"><c>coolant</c>, <c>element</c> or <c>both</c>.</param>
/// <param name="GainedKWh">Stored heat gained while it was on, kilowatt-hours.</param>
/// <param name="Minutes">How long it was on.</param>
/// <param name="MeanWatts">Mean power while it was on.</param>
public sealed record SourceForm(string Source, double GainedKWh, double Minutes, double MeanWatts);
