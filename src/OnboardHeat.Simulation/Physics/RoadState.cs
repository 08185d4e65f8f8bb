namespace OnboardHeat.Simulation.Physics;

/// <summary>What road and driver do in one step.</summary>
internal readonly record struct RoadState(
    bool IsEngineOn, bool IsCranking, double SpeedKmh, double Rpm, double FuelW, double AltitudeM);
