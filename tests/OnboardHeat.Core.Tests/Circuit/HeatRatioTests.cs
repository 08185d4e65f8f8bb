using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Tests.Circuit;

/// <summary>The fit of the tank's warming against a straight line whose figures are known.</summary>
public sealed class HeatRatioTests
{
    private const double PriorPerS = 5e-4, TruePerS = 8e-4, OffsetK = 1.5;

    [Fact]
    public void DriveThatVaries_TeachesSlopeAndOffset()
    {
        var ratio = new HeatRatio(PriorPerS);
        for (var s = 0; s < 1800; s++)
        {
            var driveK = 10 + (8 * Math.Sin(s / 90.0));
            ratio.Learn(driveK, TruePerS * (driveK + OffsetK), 60 * 4e-7, 1);
        }

        Assert.Equal(TruePerS, ratio.RatioPerS, 0.1 * TruePerS);
        Assert.Equal(TruePerS * (3 + OffsetK), ratio.Expected(3), 0.15 * TruePerS * (3 + OffsetK));
    }

    [Fact]
    public void BeforeLearning_ItIsTooUnsureToContradictAnIdleTank()
    {
        var ratio = new HeatRatio(PriorPerS);
        Assert.True(Math.Sqrt(ratio.Variance(3)) > 0.8 * ratio.Expected(3));
    }

    [Fact]
    public void Forgetting_WidensAgain()
    {
        var ratio = new HeatRatio(PriorPerS);
        for (var s = 0; s < 1200; s++)
        {
            ratio.Learn(10 + (s % 7), TruePerS * (10 + (s % 7)), 60 * 4e-7, 1);
        }

        var sure = ratio.Variance(10);
        ratio.Forget();
        Assert.True(ratio.Variance(10) > 2 * sure);
    }
}
