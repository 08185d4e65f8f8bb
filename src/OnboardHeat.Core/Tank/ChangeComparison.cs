using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>A learnt figure before and after a change of the van, and whether the two really differ.</summary>
/// <param name="Before">The old figure.</param>
/// <param name="After">The new one, in the same unit.</param>
public sealed record ChangeComparison(Estimate Before, Estimate After)
{
    /// <summary>Deviations from which on two figures differ at the 5 % level (two-sided normal test; any table of it).</summary>
    public const double FivePercent = 1.96;

    /// <summary>Difference, new less old, in its own deviations; zero when neither has any.</summary>
    public double Deviations
    {
        get
        {
            var deviation = Math.Sqrt((Before.Deviation * Before.Deviation) + (After.Deviation * After.Deviation));
            return deviation > 0 ? (After.Value - Before.Value) / deviation : 0;
        }
    }

    /// <summary>New less old as a share of the old; zero where the old is zero.</summary>
    public double Share => Before.Value == 0 ? 0 : (After.Value - Before.Value) / Before.Value;

    /// <summary>Whether they differ by more than chance at the 5 % level.</summary>
    public bool IsReal => Math.Abs(Deviations) > FivePercent;
}
