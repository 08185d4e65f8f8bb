using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>A power cut at any moment: the next run goes on from what was kept.</summary>
public sealed class AlarmRestartTests
{
    [Theory]
    [InlineData(AlarmKind.Frost, "+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+a", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.Frost, "+-", AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmKind.Frost, "+s", AlarmState.Shelved)]
    [InlineData(AlarmKind.Frost, "s", AlarmState.Shelved)]
    [InlineData(AlarmKind.Frost, "", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+-", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-a", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-r", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-ar", AlarmState.Normal)]
    public void StateAtTheCut_IsTheStateAfterIt(AlarmKind kind, string sequence, AlarmState expected)
    {
        var after = Restart(kind, sequence);
        after.Board.Close(0);
        Assert.Equal(expected, after.Point.State);
    }

    [Fact]
    public void LossAcknowledgedBeforeTheCut_NeedsOnlyTheRepairAfterIt()
    {
        var (board, point) = Restart(AlarmKind.CoolantLoss, "+-a");
        board.Take(new PersonAction(ActionKind.Repaired, "", ""), 5);
        Assert.Equal(AlarmState.Normal, point.State);
    }

    [Fact]
    public void ConditionThatStillHolds_IsRaisedAgainAtTheFirstScan_AndItsWordsAreWanted()
    {
        var (board, point) = Restart(AlarmKind.Frost, "+a");
        Assert.True(Assert.Single(board.Close(0)).IsRaised);
        Assert.Equal(AlarmState.Acknowledged, point.State);
        Assert.True(point.Observe(true, 2));
        point.Say("tank at 1.0 °C", ["Drain."]);
        Assert.False(point.Observe(true, 4));
        Assert.Empty(board.Close(4));
        Assert.Equal(["Drain."], board.Standing.Single().WhatToDo);
    }

    [Fact]
    public void ConditionThatWentMeanwhile_IsClearedByJudging()
    {
        var (board, point) = Restart(AlarmKind.Frost, "+a");
        point.Observe(false, 0);
        Assert.True(Assert.Single(board.Close(0)).IsRaised);
        point.Observe(false, 600);
        Assert.False(Assert.Single(board.Close(600)).IsRaised);
        Assert.Equal(AlarmState.Normal, point.State);
    }

    [Fact]
    public void Shelving_GoesOnForWhatWasLeftOfIt()
    {
        var (board, point) = Restart(AlarmKind.Frost, "+s");
        board.Close(58);
        Assert.Equal(AlarmState.Shelved, point.State);
        board.Close(60);
        Assert.Equal(AlarmState.Unacknowledged, point.State);
    }

    // Found by review: what was latched while works were on was out of service, and so was forgotten.
    [Fact]
    public void LossLatchedDuringWorks_IsKept()
    {
        var (board, point) = Restart(AlarmKind.CoolantLoss, "+w");
        board.Close(0);
        Assert.Equal(AlarmState.Latched, point.State);
    }

    [Fact]
    public void AgeOfAnAlarm_GoesOnOverTheCut()
    {
        var before = new AlarmBoard();
        before.Point(AlarmKind.Frost).Observe(true, 100, 0, 0);
        var after = new AlarmBoard();
        var point = after.Point(AlarmKind.Frost);
        after.Restore(before.Keep(400));
        Assert.Equal(-300, point.SinceS);
    }

    [Fact]
    public void AlarmOfAPartThatWasTakenOut_IsLeftBehind()
    {
        var board = new AlarmBoard();
        board.Restore(
            [new KeptAlarm("rating-exceeded", "old-hose", AlarmState.Unacknowledged, true, true, false, 5, 0, "hot")]);
        board.Restore([new KeptAlarm("no-such-alarm", "", AlarmState.Unacknowledged, true, true, false, 5, 0, "?")]);
        board.Close(0);
        Assert.Empty(board.Standing);
    }

    [Theory]
    [InlineData(double.NaN, double.NaN)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(-1, -1)]
    public void DamagedFigures_DoNotShelveForEver(double ageS, double shelvedLeftS)
    {
        var board = new AlarmBoard();
        var point = board.Point(AlarmKind.Frost);
        board.Restore(
            [new KeptAlarm("frost", "", AlarmState.Acknowledged, true, true, true, ageS, shelvedLeftS, "cold")]);
        board.Close(8 * 86400);
        Assert.Equal(AlarmState.Acknowledged, point.State);
        Assert.True(double.IsFinite(point.SinceS));
    }

    private static (AlarmBoard Board, AlarmPoint Point) Restart(AlarmKind kind, string sequence)
    {
        var before = new AlarmStory(kind);
        before.Play(sequence);
        var board = new AlarmBoard();
        var point = board.Point(kind);
        board.Restore(before.Keep());
        return (board, point);
    }
}
