namespace OnboardHeat.Glance.Api;

/// <summary>Every run on record.</summary>
internal sealed record RunsAnswer(IReadOnlyList<RunAnswer> Runs);
