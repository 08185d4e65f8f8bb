using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>A learnt conductance before and after a change of the van, and whether the two really differ.</summary>
/// <param name="BeforeWPerK">The old figure, watts per kelvin.</param>
/// <param name="AfterWPerK">The new one, in the same unit.</param>
public sealed record ChangeComparison(Estimate BeforeWPerK, Estimate AfterWPerK)
{
    /// <summary>
    /// Deviations from which on two figures differ at the 5 % level (two-sided normal test; any table of it).
    /// </summary>
    internal const double FivePercent = 1.96;

    /// <summary>Difference, new less old, in its own deviations; zero when neither has any.</summary>
    internal double Deviations
    {
        get
        {
            var deviation = Math.Sqrt(
                (BeforeWPerK.Deviation * BeforeWPerK.Deviation) + (AfterWPerK.Deviation * AfterWPerK.Deviation));
            return deviation > 0 ? (AfterWPerK.Value - BeforeWPerK.Value) / deviation : 0;
        }
    }

    /// <summary>New less old as a share of the old; zero where the old is zero.</summary>
    public double Share => BeforeWPerK.Value == 0 ? 0 : (AfterWPerK.Value - BeforeWPerK.Value) / BeforeWPerK.Value;

    /// <summary>Whether they differ by more than chance at the 5 % level.</summary>
    public bool IsReal => Math.Abs(Deviations) > FivePercent;
}
