using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class LearningTests
{
    [Fact]
    public void OddNight_MovesAWellKnownLossByLittle()
    {
        var learning = new SpellLearning(new Estimate(0.8, 0.02, TimeSpan.Zero, 10), 3600, 0.03);
        learning.Observe(true, 7200, 0, 0);
        learning.Observe(false, 60, 2.4, 0.05);
        Assert.InRange(learning.Known!.Value.Value, 0.8, 0.84);
        Assert.Equal(11, learning.Known.Value.Count);
    }

    [Fact]
    public void ShortSpell_TeachesNothing()
    {
        var learning = new SpellLearning(null, 3600, 0.03);
        learning.Observe(true, 600, 0.8, 0.02);
        learning.Observe(false, 60, 0.8, 0.02);
        Assert.Null(learning.Known);
    }

    [Fact]
    public void ManySpells_ComeToTheFigureTheyShare()
    {
        var learning = new SpellLearning(new Estimate(1.2, 0.1, TimeSpan.Zero, 1), 3600, 0.03);
        for (var night = 0; night < 60; night++)
        {
            learning.Observe(true, 7200, 0, 0);
            learning.Observe(false, 60, 0.7 + (night % 2 == 0 ? 0.02 : -0.02), 0.02);
        }

        Assert.Equal(0.7, learning.Known!.Value.Value, 0.03);
    }

    [Theory]
    [InlineData(0.8, 0.02, 0.82, 0.02, false)]
    [InlineData(0.8, 0.02, 0.9, 0.02, true)]
    [InlineData(0.8, 0.2, 0.5, 0.1, false)]
    public void OldAndNew_DifferOnlyBeyondChance(
        double before, double beforeDeviation, double after, double afterDeviation, bool isReal)
    {
        // Two-sided normal test at 5 %: 1.96 joint deviations (any table of the normal distribution).
        var comparison = new ChangeComparison(
            new Estimate(before, beforeDeviation, TimeSpan.Zero, 5),
            new Estimate(after, afterDeviation, TimeSpan.Zero, 5));
        Assert.Equal(isReal, comparison.IsReal);
    }

    [Theory]
    [InlineData(0.8, false)]
    [InlineData(1.4, false)]
    [InlineData(3.5, true)]
    public void StandingTank_LosingFarMoreThanItsLagging_IsToldWithinAnHour(double lossWPerK, bool isFound)
    {
        var tank = new TankGeometry(new TankDescription { VolumeLitres = 24 });
        var leak = new CircuitLeak(tank);
        var celsius = 70.0;
        for (var s = 0; s < 3600; s += 60)
        {
            celsius -= lossWPerK * (celsius - 12) * 60 / tank.TotalJPerK;
            leak.Observe(true, Math.Round(celsius * 16) / 16, 12, 1.0, 60);
        }

        Assert.Equal(isFound, leak.IsFound);
    }

    [Fact]
    public void HygieneFacts_StartAnewWhenTheWholeTankWasHot()
    {
        var facts = default(HygieneFacts).After(3600, 30, 40).After(3600, 30, 40);
        Assert.Equal(7200, facts.InGrowthRangeS);
        Assert.Null(facts.SinceHotS);
        facts = facts.After(600, 61, 64).After(600, 61, 64);
        Assert.Equal(0, facts.InGrowthRangeS);
        Assert.Equal(1200, facts.HotForS);
        facts = facts.After(3600, 50, 55);
        Assert.Equal(3600, facts.SinceHotS);
        Assert.Equal(0, facts.InGrowthRangeS);
    }
}
