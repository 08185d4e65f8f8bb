using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>
/// The state model as a table. States and shelving, latching and delays after OPC 10000-9 v1.05.03 (its definitions are
/// those of ISA-18.2 / IEC 62682); the transitions between them from memory of ISA-18.2, with this project's contract
/// where it adds to it: coolant-loss returns to normal only when gone, acknowledged and repaired. Letters: + the
/// condition comes, - it goes, a acknowledge, r repaired, s shelve for a minute, u take it off the shelf, w works
/// begin, e works end, m a minute passes.
/// </summary>
public sealed class AlarmStateModelTests
{
    [Theory]
    [InlineData(AlarmKind.Frost, "", AlarmState.Normal)]
    [InlineData(AlarmKind.Frost, "a", AlarmState.Normal)]
    [InlineData(AlarmKind.Frost, "a+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+a", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.Frost, "+aa", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.Frost, "+a-", AlarmState.Normal)]
    [InlineData(AlarmKind.Frost, "+-", AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmKind.Frost, "+-a", AlarmState.Normal)]
    [InlineData(AlarmKind.Frost, "+-+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+a-+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+s", AlarmState.Shelved)]
    [InlineData(AlarmKind.Frost, "+sm", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "+asm", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.Frost, "+s-m", AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmKind.Frost, "+su", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "s+", AlarmState.Shelved)]
    [InlineData(AlarmKind.Frost, "s+m", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.Frost, "sm", AlarmState.Normal)]
    [InlineData(AlarmKind.TankOverTemperature, "+a", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.TankOverTemperature, "+-", AlarmState.Latched)]
    [InlineData(AlarmKind.TankOverTemperature, "+-a", AlarmState.Normal)]
    [InlineData(AlarmKind.TankOverTemperature, "+a-", AlarmState.Normal)]
    [InlineData(AlarmKind.TankOverTemperature, "+s", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.CoolantLoss, "+-", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-a", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-r", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+-ar", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+-ra", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+ar", AlarmState.Acknowledged)]
    [InlineData(AlarmKind.CoolantLoss, "+ar-", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+ar-+-a", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "r+-a", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+s", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.CirculationStopped, "w", AlarmState.OutOfService)]
    [InlineData(AlarmKind.CirculationStopped, "w+", AlarmState.OutOfService)]
    [InlineData(AlarmKind.CirculationStopped, "w+e", AlarmState.Normal)]
    [InlineData(AlarmKind.CirculationStopped, "w+e+", AlarmState.Unacknowledged)]
    [InlineData(AlarmKind.CirculationStopped, "+we", AlarmState.ReturnedUnacknowledged)]
    [InlineData(AlarmKind.CirculationStopped, "+wae", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+we", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+wae", AlarmState.Latched)]
    [InlineData(AlarmKind.CoolantLoss, "+ware", AlarmState.Normal)]
    [InlineData(AlarmKind.CoolantLoss, "+wware", AlarmState.Normal)]
    [InlineData(AlarmKind.Frost, "+w", AlarmState.Unacknowledged)]
    public void Sequence_EndsInItsState(AlarmKind kind, string sequence, AlarmState expected)
    {
        var story = new AlarmStory(kind);
        story.Play(sequence);
        Assert.Equal(expected, story.Point.State);
    }

    // A replay prints the condition itself, whatever latch, acknowledgement or shelving say.
    [Theory]
    [InlineData(AlarmKind.Frost, "+-+-", "+-+-")]
    [InlineData(AlarmKind.Frost, "s+-", "+-")]
    [InlineData(AlarmKind.TankOverTemperature, "+-+-", "+-+-")]
    [InlineData(AlarmKind.CoolantLoss, "+a-+", "+-+")]
    [InlineData(AlarmKind.CirculationStopped, "w+-+e", "")]
    [InlineData(AlarmKind.CirculationStopped, "+w+e", "+-")]
    [InlineData(AlarmKind.CirculationStopped, "+w+e+", "+-+")]
    public void Changes_FollowTheCondition(AlarmKind kind, string sequence, string changes)
    {
        var story = new AlarmStory(kind);
        story.Play(sequence);
        Assert.Equal(changes, story.Changes);
    }

    [Fact]
    public void ConditionShorterThanItsOnDelay_IsNotRaised()
    {
        var point = new AlarmPoint(AlarmTable.Of(AlarmKind.Frost), "");
        Assert.False(point.Observe(true, 0));
        Assert.False(point.Observe(true, 59.9));
        Assert.False(point.Observe(false, 60));
        Assert.False(point.Observe(true, 61));
        Assert.Equal(AlarmState.Normal, point.State);
        Assert.True(point.Observe(true, 121));
    }

    [Fact]
    public void ConditionGoneForLessThanItsOffDelay_StaysRaised()
    {
        var point = new AlarmPoint(AlarmTable.Of(AlarmKind.Frost), "");
        point.Observe(true, 0);
        point.Observe(true, 60);
        point.Observe(false, 100);
        point.Observe(false, 699);
        Assert.True(point.IsPresent);
        point.Observe(false, 700);
        Assert.False(point.IsPresent);
    }
}
