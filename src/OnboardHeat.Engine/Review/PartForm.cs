namespace OnboardHeat.Engine.Review;

/// <summary>How long a part was above its rating, in its public form.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Minutes">Minutes above the rating.</param>
/// <param name="MostK">Furthest above it, kelvin.</param>
public sealed record PartForm(string Part, double Minutes, double MostK);
