using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Works;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Works;

public sealed class WholeJobTests
{
    /// <summary>Each seed is another van: tank, coil, lines, probes.</summary>
    public static TheoryData<int, string> VansAndKits()
    {
        var data = new TheoryData<int, string>();
        foreach (var seed in (int[])[1, 2, 3, 4])
        {
            data.Add(seed, "full");
            data.Add(seed, "lines");
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(VansAndKits))]
    public void WholeJob_NeverRaisesCoolantLoss_AndLearnsNothing(int seed, string kit)
    {
        var job = new WorksOnTheRoad(seed, KitOf(kit)).Until(WorksOnTheRoad.BeginsAtS + 180);
        var learnt = job.Kept.Learnt;
        job.Until(WorksOnTheRoad.EndsAtS - 2);
        Assert.True(job.Last!.IsInWorks);
        Assert.Equal(learnt, job.Kept.Learnt);
        job.Until(double.PositiveInfinity);
        Assert.False(job.Last!.IsInWorks);
        Assert.DoesNotContain(job.Changes, change => change.Change == "+coolant-loss");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void AirBurps_AreTold_AndThenCirculationIsEstablished(int seed)
    {
        var job = new WorksOnTheRoad(seed, Kits.Full).Until(WorksOnTheRoad.EndsAtS - 2);
        var steps = string.Join(", ", job.Steps.Select(s => $"{s.AtS:0} {s.Step}"));
        Assert.True(job.Steps[0].Step == BleedingStep.EngineOff, steps);
        Assert.True(job.Steps.Exists(s => s.Step == BleedingStep.AirMoving), steps);
        Assert.True(job.Steps[^1].Step == BleedingStep.Circulating, steps);
        Assert.True(job.Steps[^1].AtS > WorksOnTheRoad.RunsFromS + 600, steps);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void HoseOffTenMinutesAfterTheEnd_IsTold(int seed)
    {
        var atS = WorksOnTheRoad.EndsAtS + 600;
        var job = new WorksOnTheRoad(seed, Kits.Full, new Happening(atS, HappeningKind.TankFlowHoseOff))
            .Until(atS + 300);
        Assert.Contains(job.Changes, change => change.Change == "+coolant-loss" && change.AtS > atS);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void HoseOffInTheLastMinuteOfWorks_IsToldAfterThem(int seed)
    {
        var atS = WorksOnTheRoad.EndsAtS - 50;
        var job = new WorksOnTheRoad(seed, Kits.Full, new Happening(atS, HappeningKind.TankFlowHoseOff))
            .Until(WorksOnTheRoad.EndsAtS - 2);
        Assert.DoesNotContain(job.Changes, change => change.Change == "+coolant-loss");
        job.Until(WorksOnTheRoad.EndsAtS + 300);
        Assert.Contains(
            job.Changes, change => change.Change == "+coolant-loss" && change.AtS >= WorksOnTheRoad.EndsAtS);
    }

    [Fact]
    public void EndedJob_AsksWhatWasChanged_UntilItIsSaid()
    {
        var job = new WorksOnTheRoad(1, Kits.Full).Until(WorksOnTheRoad.EndsAtS + 60);
        Assert.True(job.Last!.Works.AsksWhatChanged);
        Assert.True(job.Kept.AsksWhatChanged);
        Assert.Contains(job.Last.Works.Words, words => words.Contains("What was changed", StringComparison.Ordinal));
    }

    private static FittedSet KitOf(string name) => name == "full" ? Kits.Full : Kits.Lines;
}
