namespace OnboardHeat.Core.Statistics;

/// <summary>
/// By how much two means differ, and within which bounds. Welch's interval where both sides have a spread of their own:
/// spreads of nights before and after need not be alike (B. L. Welch, Biometrika 34, 1947; NIST/SEMATECH e-Handbook,
/// 1.3.5.3). With a single value on one side, the spread of the other stands for both.
/// </summary>
/// <param name="Difference">Second mean less first.</param>
/// <param name="StandardError">Its deviation.</param>
/// <param name="Freedom">Degrees of freedom behind it.</param>
internal readonly record struct MeanDifference(double Difference, double StandardError, double Freedom)
{
    /// <summary>The difference; null where neither side has two values.</summary>
    public static MeanDifference? Of(in Sample first, in Sample second)
    {
        if (first.Count == 0 || second.Count == 0 || first.Count + second.Count < 3)
        {
            return null;
        }

        var difference = second.Mean - first.Mean;
        if (first.Count == 1 || second.Count == 1)
        {
            var known = first.Count == 1 ? second : first;
            return new MeanDifference(difference, known.Deviation * Math.Sqrt(1 + (1.0 / known.Count)),
                known.Count - 1);
        }

        var (a, b) = (first.Variance / first.Count, second.Variance / second.Count);
        var freedom = a + b > 0
            ? (a + b) * (a + b) / ((a * a / (first.Count - 1)) + (b * b / (second.Count - 1)))
            : first.Count + second.Count - 2;
        return new MeanDifference(difference, Math.Sqrt(a + b), freedom);
    }

    /// <summary>Half the width of the interval that holds the truth in this share of cases.</summary>
    public double HalfWidth(double share) => StudentT.Quantile((1 + share) / 2, Freedom) * StandardError;
}
