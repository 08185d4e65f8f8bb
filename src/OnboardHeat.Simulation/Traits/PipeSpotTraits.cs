namespace OnboardHeat.Simulation;

/// <summary>
/// The place on a pipe where a clip-on probe sits. Under-reading and flow-dependent lag follow from it: measured on
/// pipes (University of Liege tests), such probes show 90-98 % of the water's change and lag 9 to 35 s, the longer the
/// less flow.
/// </summary>
public sealed record PipeSpotTraits
{
    /// <summary>Heat capacity of fitting and clip, J/K.</summary>
    public double CapacityJPerK { get; init; } = 90;

    /// <summary>Coupling to coolant flowing at 5 L/min, W/K.</summary>
    public double FlowCouplingWPerK { get; init; } = 8;

    /// <summary>Coupling to the air, W/K: 2 to 10 % of the former.</summary>
    public double AirCouplingWPerK { get; init; } = 0.35;

    /// <summary>Coupling to the tank's own port, W/K.</summary>
    public double TankCouplingWPerK { get; init; } = 0.15;

    /// <summary>Whether it sits on the tank's side of the joint that may come off.</summary>
    public bool IsOnTankSide { get; init; } = true;
}
