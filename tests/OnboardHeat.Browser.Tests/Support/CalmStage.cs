using OnboardHeat.Simulation;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>
/// The engine warms up and nothing goes wrong: ten minutes into the day, the coolant rises from second to second.
/// </summary>
public sealed class CalmStage() : Stage(DrivePlans.MountainDay(hoseComesOff: false), 560);
