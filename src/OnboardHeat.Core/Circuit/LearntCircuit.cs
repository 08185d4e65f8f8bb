using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Circuit;

/// <summary>What was learnt of the coolant circuit, slowly, from its own record. Null: not learnt yet.</summary>
public sealed record LearntCircuit
{
    /// <summary>Heat conductance between coolant and tank water at full flow, watts per kelvin.</summary>
    public Estimate? CoilWPerK { get; init; }
}
