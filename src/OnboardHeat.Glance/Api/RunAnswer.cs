namespace OnboardHeat.Glance.Api;

/// <summary>One run on record.</summary>
internal sealed record RunAnswer(int Run, string? From, string? To, double LengthS, string Dating);
