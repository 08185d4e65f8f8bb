namespace OnboardHeat.Engine.Pictures;

/// <summary>What is known of the coolant circuit. Null says that it cannot be told, never that all is well.</summary>
/// <param name="EngineRunning">Whether the engine runs.</param>
/// <param name="EngineInferred">Whether that was worked out from the coolant lines, because no signal says so.</param>
/// <param name="Circulating">Whether warm coolant passes the coil.</param>
public sealed record CircuitForm(bool? EngineRunning, bool EngineInferred, bool? Circulating);
