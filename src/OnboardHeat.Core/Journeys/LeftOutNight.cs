namespace OnboardHeat.Core.Journeys;

/// <summary>A standing spell that a comparison does not rest on.</summary>
/// <param name="Night">The spell.</param>
/// <param name="IsAfter">Whether it lies after the change.</param>
/// <param name="Why">Why it was left out.</param>
public sealed record LeftOutNight(Journey Night, bool IsAfter, NightReason Why);
