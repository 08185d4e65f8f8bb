namespace OnboardHeat.Core.Circuit;

/// <summary>What is known of the coolant circuit after a scan.</summary>
public sealed record CircuitEstimate
{
    /// <summary>Nothing is known.</summary>
    public static CircuitEstimate Unknown { get; } = new();

    /// <summary>Whether the engine runs; null when it cannot be told.</summary>
    public bool? IsEngineRunning { get; init; }

    /// <summary>Whether that was worked out from the coolant lines, because no signal says so.</summary>
    public bool IsEngineInferred { get; init; }

    /// <summary>Whether warm coolant passes the coil; null when it cannot be told.</summary>
    public bool? IsCirculating { get; init; }

    /// <summary>
    /// What each sign said when circulation was last found stopped or coolant leaving in this run; empty if never.
    /// </summary>
    public IReadOnlyList<SignEvidence> Evidence { get; init; } = [];
}
