namespace OnboardHeat.Glance.Api;

/// <summary>What happened between two times, in order.</summary>
internal sealed record EventsAnswer(IReadOnlyList<EventAnswer> Events);
