using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Tests.Circuit;

/// <summary>
/// Run lengths of the cumulative sum against the published table (Montgomery, Introduction to Statistical Quality
/// Control, two-sided tabular CUSUM, k = 1/2, h = 4 and 5; quoted from memory and recomputed by the Nystroem method,
/// all digits the same).
/// </summary>
public sealed class CusumTests
{
    private const double Reference = 0.5;

    [Theory]
    [InlineData(4, 0, 168)]
    [InlineData(4, 0.5, 26.6)]
    [InlineData(4, 1, 8.38)]
    [InlineData(4, 2, 3.34)]
    [InlineData(5, 0, 465)]
    [InlineData(5, 0.5, 38.0)]
    [InlineData(5, 1, 10.4)]
    [InlineData(5, 2, 4.01)]
    public void TwoSidedRunLength_IsThatOfThePublishedTable(double threshold, double shift, double published)
    {
        const int runs = 4000;
        const int seed = 20261125;
        var random = new Random(seed);
        double sum = 0, sum2 = 0;
        for (var i = 0; i < runs; i++)
        {
            var length = RunLength(random, threshold, shift);
            sum += length;
            sum2 += (double)length * length;
        }

        var mean = sum / runs;
        var deviation = Math.Sqrt(((sum2 / runs) - (mean * mean)) / runs);
        Assert.True(
            Math.Abs(mean - published) < (4 * deviation) + (0.005 * published),
            $"seed {seed}: {mean:0.00} +- {deviation:0.00}");
    }

    [Fact]
    public void Ceiling_HoldsTheSumDown_SoThatItIsForgottenInTime()
    {
        var sum = new Cusum(3);
        sum.Add(100);
        Assert.Equal(3, sum.Sum);
        sum.Add(-2);
        Assert.Equal(1, sum.Sum);
        sum.Add(-2);
        Assert.Equal(0, sum.Sum);
    }

    private static int RunLength(Random random, double threshold, double shift)
    {
        Cusum up = new(), down = new();
        for (var n = 1; ; n++)
        {
            var x = shift + Gauss(random);
            up.Add(x - Reference);
            down.Add(-x - Reference);
            if (up.Sum > threshold || down.Sum > threshold)
            {
                return n;
            }
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
