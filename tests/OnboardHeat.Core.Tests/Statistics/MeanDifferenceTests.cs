using CsCheck;
using OnboardHeat.Core.Statistics;

namespace OnboardHeat.Core.Tests.Statistics;

public sealed class MeanDifferenceTests
{
    [Fact]
    public void WorkedExampleOfAHandbook_IsMet()
    {
        // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3, two-sample t-test on AUTO83B.DAT: summary figures
        // of the page; variances not assumed equal: t = -12.94627 with 136.8750 degrees of freedom.
        var difference =
            MeanDifference.Of(new Sample(249, 20.14458, 6.41470), new Sample(79, 30.48101, 6.10771))!.Value;
        Assert.Equal(10.33643, difference.Difference, 1e-5);
        Assert.Equal(12.94627, difference.Difference / difference.StandardError, 1e-4);
        Assert.Equal(136.8750, difference.Freedom, 1e-3);
    }

    [Fact]
    public void NinetyPercentInterval_IsThatOfAReferenceLibrary()
    {
        // scipy 1.10.1: ttest_ind(after, before, equal_var=False) gives t = -14.302033812329535; the interval from its
        // standard error and t.ppf(0.95, 3.7061568098754556).
        var difference =
            MeanDifference.Of(Sample.Of([0.812, 0.795, 0.824, 0.807]), Sample.Of([0.655, 0.671, 0.640]))!.Value;
        Assert.Equal(-14.302033812329535, difference.Difference / difference.StandardError, 1e-9);
        Assert.Equal(3.7061568098754556, difference.Freedom, 1e-9);
        Assert.Equal(-0.17768021205847356, difference.Difference - difference.HalfWidth(0.9), 1e-9);
        Assert.Equal(-0.13065312127485956, difference.Difference + difference.HalfWidth(0.9), 1e-9);
    }

    [Fact]
    public void OneAgainstOne_SaysNothing() => Assert.Null(MeanDifference.Of(Sample.Of([1]), Sample.Of([2])));

    [Fact]
    public void Interval_HoldsTheTruthNineTimesInTen()
    {
        // GIVEN five nights of a spread of 3 % before and three of 6 % after, and a true difference of -0.1, four
        // thousand times over.
        const int Trials = 4000;
        var held = 0;
        var random = new Random(20260523);
        for (var trial = 0; trial < Trials; trial++)
        {
            var before = Sample.Of([.. Enumerable.Range(0, 5).Select(_ => 0.8 + (0.024 * Normal(random)))]);
            var after = Sample.Of([.. Enumerable.Range(0, 3).Select(_ => 0.7 + (0.042 * Normal(random)))]);
            var difference = MeanDifference.Of(before, after)!.Value;
            held += Math.Abs(difference.Difference + 0.1) <= difference.HalfWidth(0.9) ? 1 : 0;
        }

        // THEN 90 % hold it; four thousand draws put 1.4 percentage points on three deviations, and Welch's own error
        // is about one.
        Assert.InRange(held / (double)Trials, 0.875, 0.93);
    }

    [Fact]
    public void Order_OnlyTurnsTheSign() =>
        Gen.Select(Gen.Double[0.1, 2].Array[1, 6], Gen.Double[0.1, 2].Array[2, 6]).Sample((a, b) =>
    {
        var forth = MeanDifference.Of(Sample.Of(a), Sample.Of(b))!.Value;
        var back = MeanDifference.Of(Sample.Of(b), Sample.Of(a))!.Value;
        Assert.Equal(forth.Difference, -back.Difference, 1e-12);
        Assert.Equal(forth.HalfWidth(0.9), back.HalfWidth(0.9), 1e-9);
    });

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
