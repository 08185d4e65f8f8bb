namespace OnboardHeat.Engine.Judging;

/// <summary>How often the probes are read.</summary>
/// <param name="Driving">Period while the engine runs or coolant lines move; more than zero.</param>
/// <param name="Parked">Period while the van stands and nothing moves; not below <paramref name="Driving"/>.</param>
public readonly record struct ScanPeriods(TimeSpan Driving, TimeSpan Parked);
