namespace OnboardHeat.Glance.Api;

/// <summary>Two spans laid over each other, on the start and the surroundings of the first.</summary>
internal sealed record CompareAnswer(CourseAnswer A, CourseAnswer B, double StartCelsius, double? SurroundingsCelsius);
