namespace OnboardHeat.Core.Statistics;

/// <summary>Some values of one kind: how many, their mean and their spread.</summary>
/// <param name="Count">How many.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">
/// Their standard deviation about it, from one less than their count; zero for a single one.
/// </param>
internal readonly record struct Sample(int Count, double Mean, double Deviation)
{
    public double Variance => Deviation * Deviation;

    public static Sample Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0)
        {
            return default;
        }

        var mean = values.Average();
        var squares = values.Sum(value => (value - mean) * (value - mean));
        return new Sample(values.Count, mean, values.Count < 2 ? 0 : Math.Sqrt(squares / (values.Count - 1)));
    }
}
