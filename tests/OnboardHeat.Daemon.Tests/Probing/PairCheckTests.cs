using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Tests.Probing;

public sealed class PairCheckTests
{
    private readonly PairCheck _check = new("flow", "return");

    [Fact]
    public void SteadyPair_LearnsWhatTheSecondLacks()
    {
        Look(PairCheck.Looks, _ => 40, _ => 39.75);
        Assert.True(_check.IsSteady);
        Assert.Equal(0.25, _check.OffsetKelvin, 1e-9);
        Assert.Equal(40, _check.Celsius, 1e-9);
    }

    [Fact]
    public void StepsOfASixteenth_AreAveraged()
    {
        // The true difference lies between two steps of the probe; the mean comes nearer to it than any single look.
        Look(PairCheck.Looks, _ => 40, i => i % 4 == 0 ? 39.875 : 39.9375);
        Assert.Equal(0.078, _check.OffsetKelvin, 3e-3);
    }

    [Fact]
    public void OneThatStillWarms_IsWaitedFor()
    {
        Look(PairCheck.Looks, i => 40, i => 36 + (0.1 * i));
        Assert.False(_check.IsSteady);
        Look(PairCheck.Looks, _ => 40, _ => 39.9);
        Assert.True(_check.IsSteady);
        Assert.Equal(0.1, _check.OffsetKelvin, 1e-9);
    }

    [Fact]
    public void SecondCheck_ReplacesTheFirstAndDoesNotAddToIt()
    {
        // The reading already holds 0.25 K of the check before: the same pair must come to the same offset again.
        for (var i = 0; i < PairCheck.Looks; i++)
        {
            _check.Observe(SomeSight.Of(40, 40, returnLearntK: 0.25));
        }

        Assert.Equal(0.25, _check.OffsetKelvin, 1e-9);
    }

    [Theory]
    [InlineData(null, 40.0, "flow")]
    [InlineData(40.0, null, "return")]
    public void MissingReading_IsSaidAndBeginsAnew(double? flowC, double? returnC, string named)
    {
        Look(PairCheck.Looks - 1, _ => 40, _ => 40);
        Assert.Contains(named, _check.Observe(SomeSight.Of(flowC, returnC)), StringComparison.Ordinal);
        Look(PairCheck.Looks - 1, _ => 40, _ => 40);
        Assert.False(_check.IsSteady);
    }

    private void Look(int times, Func<int, double> flowC, Func<int, double> returnC)
    {
        for (var i = 0; i < times; i++)
        {
            Assert.Null(_check.Observe(SomeSight.Of(flowC(i), returnC(i))));
        }
    }
}
