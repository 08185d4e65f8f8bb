namespace OnboardHeat.Core.Journeys;

/// <summary>How long a fitted part was hotter than its rating during a journey.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Minutes">Minutes above the rating; more than zero.</param>
/// <param name="MostK">Furthest above the rating, kelvin; more than zero.</param>
public sealed record PartMinutes(string Part, double Minutes, double MostK);
