using CsCheck;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Shower;

/// <summary>Long steps of forecasts against the estimator's own physics in steps of seconds.</summary>
public sealed class SteadyCourseTests
{
    private const int N = TankGeometry.Layers;

    private static readonly TankGeometry s_tank = new(new TankDescription { VolumeLitres = 24 });

    [Fact]
    public void HalfHourSteps_CoolAsSecondsDo()
    {
        var around = new TankSurrounds(10, 0.9, 0, 0, 0, 1, 0);
        AssertAlike(Warm(70), around, longestStepS: 1800, hours: 24, toleranceK: 0.03);
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(0.5, 12)]
    public void MinuteSteps_HeatAsSecondsDo(double foot, double reach)
    {
        var around = new TankSurrounds(10, 0.9, 80, 45, foot, reach, 0);
        AssertAlike(Warm(15), around, longestStepS: 60, hours: 1, toleranceK: 0.6);
    }

    // First law: without loss, 600 W for two hours raise the mean by 600 * 7200 / C, whatever the layers do.
    [Fact]
    public void ElementWithoutLoss_RaisesTheMeanByItsHeat()
    {
        var layers = Warm(15);
        var before = LayeredTank.Mean(layers);
        var course = new SteadyCourse(s_tank, new TankSurrounds(0, 0, 0, 0, 0, 3, 600), 60);
        for (var i = 0; i < 120; i++)
        {
            course.Step(layers, 20);
        }

        Assert.Equal(before + (600 * 7200 / s_tank.TotalJPerK), LayeredTank.Mean(layers), 1e-9);
    }

    [Fact]
    public void AnyTankAndSurroundings_StayBetweenTheColdestAndTheHottest() =>
        Gen.Select(
            Gen.Double[2, 150], Gen.Double[0.02, 20], Gen.Double[0, 150], Gen.Double[2, 12], Gen.Double[1, 95].Array[N])
            .Sample((litres, loss, coil, reach, layers) =>
            {
                layers = [.. layers.Order()];
                var tank = new TankGeometry(new TankDescription { VolumeLitres = litres });
                var course = new SteadyCourse(tank, new TankSurrounds(0, loss, 85, coil, 0, reach, 0), 1800);
                var (low, high) = (Math.Min(layers[0], -5), Math.Max(layers[^1], 85));
                for (var i = 0; i < 20; i++)
                {
                    course.Step(layers, -5);
                    Assert.All(layers, layer => Assert.InRange(layer, low - 1e-9, high + 1e-9));
                }
            });

    private static void AssertAlike(
        double[] start, TankSurrounds around, double longestStepS, double hours, double toleranceK)
    {
        var (coarse, fine) = (start.ToArray(), start.ToArray());
        var course = new SteadyCourse(s_tank, around, longestStepS);
        for (var s = 0.0; s < (hours * 3600) - 1; s += course.StepS)
        {
            course.Step(coarse, around.AirCelsius);
            for (var k = 0; k < 200; k++)
            {
                LayeredTank.Pass(fine, s_tank, around, course.StepS / 200);
                LayeredTank.Mix(fine);
            }
        }

        for (var i = 0; i < N; i++)
        {
            Assert.Equal(fine[i], coarse[i], toleranceK);
        }
    }

    private static double[] Warm(double celsius) => [.. Enumerable.Range(0, N).Select(i => celsius + (0.3 * i))];
}
