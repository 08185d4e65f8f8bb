using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>What one kit said in one drive, beside what was so.</summary>
internal sealed record DriveResult(
    ScenarioKind Kind, int Seed, Kit Kit, double DrivingHours, double LengthS, double? EventAtS, HappeningKind? Failure,
    IReadOnlyList<Raised> Said);
