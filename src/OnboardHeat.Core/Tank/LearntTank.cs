using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>What was learnt of the tank, slowly, from its own record. Null: not learnt yet.</summary>
public sealed record LearntTank
{
    /// <summary>Heat loss per kelvin above the surroundings, watts per kelvin.</summary>
    public Estimate? LossWPerK { get; init; }
}
