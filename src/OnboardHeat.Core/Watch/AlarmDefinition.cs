namespace OnboardHeat.Core.Watch;

/// <summary>What is fixed about a kind of alarm.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Its name in lines, topics and pages.</param>
/// <param name="Priority">How soon to act.</param>
/// <param name="IsLatched">Whether it stays until it is gone and was acknowledged.</param>
/// <param name="IsOfCircuit">Whether works on the circuit take it out of service.</param>
/// <param name="OnDelayS">Seconds that the condition must last before it is raised; zero or more.</param>
/// <param name="OffDelayS">Seconds that it must be gone before it is cleared; zero or more.</param>
public sealed record AlarmDefinition(
    AlarmKind Kind, string Name, AlarmPriority Priority, bool IsLatched, bool IsOfCircuit, double OnDelayS,
    double OffDelayS);
