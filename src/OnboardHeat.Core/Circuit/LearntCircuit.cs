using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Circuit;

/// <summary>What was learnt of the coolant circuit, slowly, from its own record. Null: not learnt yet.</summary>
public sealed record LearntCircuit
{
    /// <summary>Heat conductance between coolant and tank water at full flow, watts per kelvin.</summary>
    public Estimate? CoilWPerK { get; init; }

    /// <summary>
    /// How fast the flow line cools while full and still: share of its excess over the air lost in a second, 1/s.
    /// </summary>
    public Estimate? FlowDecayPerS { get; init; }

    /// <summary>The same for the return line, 1/s.</summary>
    public Estimate? ReturnDecayPerS { get; init; }
}
