namespace OnboardHeat.Simulation.Physics;

/// <summary>What surrounds a spot on a pipe in one step.</summary>
internal readonly record struct SpotPlace(
    double AirCelsius, double WindFactor, double TankCelsius, double SprayCelsius);
