using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>What was learnt of the tank, slowly, from its own record. Null: not learnt yet.</summary>
public sealed record LearntTank
{
    /// <summary>
    /// Heat loss per kelvin above the surroundings, watts per kelvin; the count is of standing spells.
    /// </summary>
    public Estimate? LossWPerK { get; init; }

    /// <summary>
    /// The loss as it was before the insulation was changed, watts per kelvin; null when it never was.
    /// </summary>
    public Estimate? LossBeforeChangeWPerK { get; init; }

    /// <summary>Old and new loss side by side; null until both are known.</summary>
    public ChangeComparison? LossChange =>
        LossBeforeChangeWPerK is { } before && LossWPerK is { } after ? new ChangeComparison(before, after) : null;
}
