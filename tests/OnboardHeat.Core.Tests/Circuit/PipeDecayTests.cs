using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Tests.Circuit;

/// <summary>
/// What a line's cooling says, against the heat balance of a hose: full, (coolant + wall) / loss; bared, wall / loss. A
/// hose of 16 mm with 600 J/(m K) of wall and 0.2 l/m of coolant at 3.6 kJ/(l K) is 2.2 times as slow full as empty,
/// one with a thin wall four times.
/// </summary>
public sealed class PipeDecayTests
{
    private const double PriorTauS = 2300;

    [Fact]
    public void UnknownVan_DoubtsBetween_AndIsSureAtTheEnds()
    {
        var decay = new PipeDecay(PriorTauS, null);
        Assert.True(decay.Leaving(1 / 350.0, 0) > 3);
        Assert.True(decay.Leaving(1 / 2300.0, 0) < -3);
        Assert.InRange(decay.Leaving(1 / 1000.0, 0), -1.5, 1.5);
    }

    [Fact]
    public void VanWhoseFullLineIsQuick_IsNotTakenForBared_OnceAStopHasTaughtIt()
    {
        var decay = new PipeDecay(PriorTauS, null);
        var before = decay.Leaving(1 / 700.0, 0);
        decay.Learn(1 / 700.0);
        Assert.True(before > 1);
        Assert.True(decay.Leaving(1 / 700.0, 0) < 0);
    }

    [Fact]
    public void VanWhoseFullLineIsSlow_IsFoundBaredSooner_OnceAStopHasTaughtIt()
    {
        var decay = new PipeDecay(PriorTauS, null);
        var before = decay.Leaving(1 / 900.0, 0);
        decay.Learn(1 / 4000.0);
        Assert.True(decay.Leaving(1 / 900.0, 0) > before + 1);
    }

    [Fact]
    public void KeptAndRead_SaysTheSame()
    {
        var decay = new PipeDecay(PriorTauS, null);
        decay.Learn(1 / 1500.0);
        decay.Learn(1 / 1700.0);
        var again = new PipeDecay(PriorTauS, decay.Learnt);
        Assert.Equal(decay.Leaving(1 / 600.0, 1e-5), again.Leaving(1 / 600.0, 1e-5), 1e-9);
        Assert.Equal(2, decay.Learnt!.Value.Count);
    }

    [Fact]
    public void SlopeThatNoiseHides_SaysNothingLoud()
    {
        var decay = new PipeDecay(PriorTauS, null);
        Assert.InRange(decay.Leaving(1 / 600.0, 1 / 500.0), -1, 1.5);
    }
}
