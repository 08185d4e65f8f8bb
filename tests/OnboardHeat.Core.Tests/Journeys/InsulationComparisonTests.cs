using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tests.Journeys;

public sealed class InsulationComparisonTests
{
    [Fact]
    public void LowerLoss_IsBetterWithItsInterval()
    {
        // The figures of MeanDifferenceTests, whose half width of 0.0235135 a reference library gave, with the share
        // that all nights have in common added as independent errors add: the root of 0.0235135² + (1.645 x 0.04 x
        // 0.154167)², by hand 0.025608.
        var answer = InsulationComparison.Of(Nights(0.812, 0.795, 0.824, 0.807), Nights(0.655, 0.671, 0.640));
        Assert.Equal(InsulationVerdict.Better, answer.Verdict);
        Assert.Equal(-0.154167, answer.DifferenceWPerK!.Value, 1e-5);
        Assert.Equal(-0.179775, answer.LowWPerK!.Value, 1e-5);
        Assert.Equal(-0.128559, answer.HighWPerK!.Value, 1e-5);
        Assert.Equal((4, 3), (answer.Before.Count, answer.After.Count));
    }

    [Fact]
    public void HigherLoss_IsWorse() =>
        Assert.Equal(InsulationVerdict.Worse,
            InsulationComparison.Of(Nights(0.66, 0.65, 0.67), Nights(0.80, 0.81, 0.79)).Verdict);

    [Fact]
    public void ScatterAsWideAsTheDifference_ShowsNone()
    {
        var answer = InsulationComparison.Of(Nights(0.7, 0.9), Nights(0.6, 0.85));
        Assert.Equal(InsulationVerdict.NoDifferenceSeen, answer.Verdict);
        Assert.True(answer.LowWPerK < 0 && answer.HighWPerK > 0);
    }

    [Fact]
    public void NightsAlikeByLuck_AreNoSurerThanTheyAreMeasured()
    {
        // Each night is good to 0.01 W/K: two means of two such nights differ by 0.01 at one deviation, and t(0.95, 2)
        // is 2.920.
        var answer = InsulationComparison.Of(Nights(0.8, 0.8), Nights(0.795, 0.795));
        Assert.Equal(InsulationVerdict.NoDifferenceSeen, answer.Verdict);
        Assert.Equal(0.0292, (answer.HighWPerK!.Value - answer.LowWPerK!.Value) / 2, 0.0002);
    }

    [Fact]
    public void OneNightOnEachSide_IsNotEnough()
    {
        var answer = InsulationComparison.Of(Nights(0.8), Nights(0.5));
        Assert.Equal(InsulationVerdict.NotEnoughNights, answer.Verdict);
        Assert.Equal(-0.3, answer.DifferenceWPerK!.Value, 1e-9);
        Assert.Null(answer.LowWPerK);
    }

    [Fact]
    public void NoNightAfter_IsNotEnoughAndHasNoDifference()
    {
        var answer = InsulationComparison.Of(Nights(0.8, 0.81), []);
        Assert.Equal(InsulationVerdict.NotEnoughNights, answer.Verdict);
        Assert.Null(answer.DifferenceWPerK);
        Assert.Null(answer.AfterWPerK);
    }

    [Fact]
    public void Spells_AreLeftOutForTheReasonThatStruckThem()
    {
        var good = Night(0.8);
        (Journey Night, NightReason? Why)[] cases =
        [
            (good, null),
            (good with { ToS = 5 * 3600, EndedBy = JourneyEnd.Draw }, NightReason.Draw),
            (good with { EndedBy = JourneyEnd.Draw }, null),
            (good with { ValvesOpenShare = 0.4, JudgedS = 5 * 3600 }, NightReason.ValvesOpen),
            (good with { ValvesOpenShare = 0.1, JudgedS = 8 * 3600 }, null),
            (good with { CirculatedShare = 0.3 }, NightReason.Circulation),
            (good with { ToS = 5 * 3600, EndedBy = JourneyEnd.Element }, NightReason.Element),
            (good with { ToS = (6 * 3600) - 1, EndedBy = JourneyEnd.Engine }, NightReason.TooShort),
            (good with { ToS = 6 * 3600 }, null),
            (good with { StartExcessK = 14.9, LossWPerK = null }, NightReason.TooCool),
            (good with { StartExcessK = null, LossWPerK = null }, NightReason.SurroundingsUnknown),
            (good with { LossWPerK = null }, NightReason.NotCooling),
        ];
        foreach (var (night, why) in cases)
        {
            Assert.Equal(why, InsulationComparison.ReasonAgainst(night));
        }

        var answer = InsulationComparison.Of(cases.Select(c => c.Night), []);
        Assert.Equal(cases.Count(c => c.Why is null), answer.Before.Count);
        Assert.Equal(cases.Where(c => c.Why is not null).Select(c => c.Why!.Value), answer.LeftOut.Select(l => l.Why));
    }

    [Fact]
    public void DrivesAndDraws_ArePassedOver()
    {
        var answer =
            InsulationComparison.Of([Night(0.8) with { Type = JourneyType.Heating },
            Night(0.8) with { Type = JourneyType.Draw }], []);
        Assert.Empty(answer.Before);
        Assert.Empty(answer.LeftOut);
    }

    private static IEnumerable<Journey> Nights(params double[] lossWPerK) => lossWPerK.Select(Night);

    private static Journey Night(double lossWPerK) => new()
    {
        Type = JourneyType.Standing,
        Run = 1,
        FromS = 0,
        ToS = 9 * 3600,
        StartCelsius = 62,
        EndCelsius = 52,
        PeakCelsius = 62,
        GainedKWh = -0.3,
        SurroundingsCelsius = 14,
        JudgedS = 9 * 3600,
        StartExcessK = 48,
        LossWPerK = new Estimate(lossWPerK, 0.01, TimeSpan.Zero, 6000),
    };
}
