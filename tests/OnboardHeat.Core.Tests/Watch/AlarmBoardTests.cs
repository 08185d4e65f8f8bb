using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class AlarmBoardTests
{
    [Fact]
    public void Standing_ListsTheMostUrgentFirst()
    {
        var board = new AlarmBoard();
        AlarmKind[] kinds = [AlarmKind.ScaldRisk, AlarmKind.Frost, AlarmKind.CoolantLoss, AlarmKind.WaterInTray];
        foreach (var kind in kinds)
        {
            board.Point(kind).Observe(true, 0, 0, 0);
        }

        board.Close(0);
        Assert.Equal(
            ["coolant-loss", "water-in-tray", "frost", "scald-risk"],
            board.Standing.Select(alarm => alarm.Definition.Name));
    }

    [Theory]
    [InlineData("probe-fault/tray", "tray")]
    [InlineData("probe-fault", "flow,tray")]
    [InlineData("", "flow,tray")]
    [InlineData("probe-fault-tray", "")]
    [InlineData("probe-faultXtray", "")]
    [InlineData("frost", "")]
    [InlineData("tray", "")]
    public void Acknowledge_ReachesWhatItNames(string target, string acknowledged)
    {
        var board = new AlarmBoard();
        AlarmPoint[] points = [board.Point(AlarmKind.ProbeFault, "flow"), board.Point(AlarmKind.ProbeFault, "tray")];
        foreach (var point in points)
        {
            point.Observe(true, 0, 0, 0);
        }

        board.Take(new PersonAction(ActionKind.Acknowledge, target, ""), 1);
        Assert.Equal(acknowledged, string.Join(
            ",", points.Where(p => p.State == AlarmState.Acknowledged).Select(p => p.Subject)));
    }

    [Fact]
    public void ShelveWithoutTarget_LeavesAloneWhatDoesNotStand()
    {
        var board = new AlarmBoard();
        var (standing, quiet) = (board.Point(AlarmKind.Frost), board.Point(AlarmKind.WaterInTray));
        standing.Observe(true, 0, 0, 0);
        board.Take(new PersonAction(ActionKind.Shelve, "", "10"), 1);
        Assert.Equal((AlarmState.Shelved, AlarmState.Normal), (standing.State, quiet.State));
    }

    [Theory]
    [InlineData("30", 30 * 60)]
    [InlineData("", 8 * 3600)]
    [InlineData("soon", 8 * 3600)]
    [InlineData("-5", 8 * 3600)]
    [InlineData("NaN", 8 * 3600)]
    [InlineData("1e300", 7 * 86400)]
    public void Shelving_EndsByItself(string minutes, double afterS)
    {
        var board = new AlarmBoard();
        var point = board.Point(AlarmKind.Frost);
        point.Observe(true, 0, 0, 0);
        board.Take(new PersonAction(ActionKind.Shelve, "frost", minutes), 0);
        board.Close(afterS - 1);
        Assert.Equal(AlarmState.Shelved, point.State);
        board.Close(afterS);
        Assert.Equal(AlarmState.Unacknowledged, point.State);
    }

    [Fact]
    public void Works_TakeTheCircuitsAlarmsOutOfServiceAndNoOthers()
    {
        var board = new AlarmBoard();
        foreach (var row in AlarmTable.Rows)
        {
            board.Point(row.Kind);
        }

        board.Take(new PersonAction(ActionKind.WorksBegin, "", ""), 0);
        board.Close(0);
        var outOfService = board.Standing.Where(alarm => alarm.State == AlarmState.OutOfService)
            .Select(alarm => alarm.Definition);
        Assert.Equal(AlarmTable.Rows.Where(row => row.IsOfCircuit).ToHashSet(), outOfService.ToHashSet());
        Assert.Contains(AlarmTable.Of(AlarmKind.CoolantLoss), outOfService);
        Assert.DoesNotContain(AlarmTable.Of(AlarmKind.TankOverTemperature), outOfService);
    }

    [Fact]
    public void WorksEndedWithoutBegin_ChangesNothing()
    {
        var board = new AlarmBoard();
        var point = board.Point(AlarmKind.CoolantLoss);
        point.Observe(true, 0);
        board.Take(new PersonAction(ActionKind.WorksEnd, "", ""), 1);
        Assert.False(board.IsInWorks);
        Assert.Equal(AlarmState.Unacknowledged, point.State);
    }

    // Contracts: the alarm table. Names, priorities and latches are promises to those who read them.
    [Theory]
    [InlineData("coolant-loss", AlarmPriority.Critical, true)]
    [InlineData("tank-over-temperature", AlarmPriority.Critical, true)]
    [InlineData("coolant-over-temperature", AlarmPriority.Critical, false)]
    [InlineData("element-dry", AlarmPriority.Critical, false)]
    [InlineData("circulation-stopped", AlarmPriority.Warning, false)]
    [InlineData("coolant-weep", AlarmPriority.Warning, false)]
    [InlineData("water-in-tray", AlarmPriority.Warning, false)]
    [InlineData("rating-exceeded", AlarmPriority.Warning, false)]
    [InlineData("frost", AlarmPriority.Warning, false)]
    [InlineData("probe-fault", AlarmPriority.Warning, false)]
    [InlineData("cannot-judge", AlarmPriority.Warning, false)]
    [InlineData("history-damaged", AlarmPriority.Warning, false)]
    [InlineData("history-stopped", AlarmPriority.Warning, false)]
    [InlineData("power-low", AlarmPriority.Warning, false)]
    [InlineData("works-open", AlarmPriority.Warning, false)]
    [InlineData("rating-near", AlarmPriority.Advice, false)]
    [InlineData("scald-risk", AlarmPriority.Advice, false)]
    [InlineData("close-valves", AlarmPriority.Advice, false)]
    [InlineData("hygiene-due", AlarmPriority.Advice, false)]
    [InlineData("weak-heating", AlarmPriority.Advice, false)]
    [InlineData("test-due", AlarmPriority.Advice, false)]
    public void Table_KeepsItsPromises(string name, AlarmPriority priority, bool isLatched)
    {
        var row = AlarmTable.Find(name);
        Assert.NotNull(row);
        Assert.Equal((name, priority, isLatched), (row.Name, row.Priority, row.IsLatched));
        Assert.Same(row, AlarmTable.Of(row.Kind));
    }

    [Fact]
    public void Table_HasARowForEveryKindInItsOrder() =>
        Assert.Equal(Enum.GetValues<AlarmKind>(), AlarmTable.Rows.Select(row => row.Kind));

    [Fact]
    public void UnknownName_IsNotFound() => Assert.Null(AlarmTable.Find("coolant"));
}
