using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>Figures added up by weight, for their mean and deviation.</summary>
/// <param name="Sum">Sum of weight times figure.</param>
/// <param name="Squares">Sum of weight times figure squared.</param>
/// <param name="Weights">Sum of the weights.</param>
internal readonly record struct WeightedSums(double Sum, double Squares, double Weights)
{
    /// <summary>Mean and deviation of what was added; of no age and no count.</summary>
    public Estimate Estimate
    {
        get
        {
            var mean = Sum / Weights;
            return new Estimate(mean, Math.Sqrt(Math.Max(0, (Squares / Weights) - (mean * mean))), TimeSpan.Zero, 0);
        }
    }

    /// <summary>These and the figures of one ensemble, each with the same weight.</summary>
    public WeightedSums With(ReadOnlySpan<double> values, double weight)
    {
        var (sum, squares) = (Sum, Squares);
        foreach (var value in values)
        {
            sum += weight * value;
            squares += weight * value * value;
        }

        return new WeightedSums(sum, squares, Weights + (weight * values.Length));
    }
}
