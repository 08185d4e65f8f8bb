using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>What a person says to the daemon in a plan.</summary>
/// <param name="AtS">When, seconds from the start.</param>
/// <param name="Action">What.</param>
public readonly record struct PlannedAction(double AtS, PersonAction Action);
