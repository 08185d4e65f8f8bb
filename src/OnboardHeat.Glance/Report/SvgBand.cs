namespace OnboardHeat.Glance.Report;

/// <summary>A stretch of time behind the lines.</summary>
/// <param name="Kind">Type of the journey; names its look.</param>
/// <param name="From">Its start.</param>
/// <param name="To">Its end.</param>
internal readonly record struct SvgBand(string Kind, DateTimeOffset From, DateTimeOffset To);
