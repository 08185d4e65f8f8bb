namespace OnboardHeat.Simulation;

/// <summary>A stretch of a plan.</summary>
/// <param name="Kind">What road, or what standing.</param>
/// <param name="Minutes">How long it lasts.</param>
/// <param name="GradePercent">Slope, positive upwards; climbs and descents only.</param>
public readonly record struct Leg(LegKind Kind, double Minutes, double GradePercent = 0);
