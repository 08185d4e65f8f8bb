namespace OnboardHeat.Glance.Api;

/// <summary>Lines of a chart.</summary>
internal sealed record ChartAnswer(IReadOnlyList<ChartLineAnswer> Lines);
