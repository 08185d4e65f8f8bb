using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Watch;
using OnboardHeat.Core.Works;
using OnboardHeat.Engine.Options;
using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Adapters.Tests.Outputs;

/// <summary>
/// The sounding rules as the contracts state them: advice never, warnings with the engine on, critical always.
/// </summary>
public sealed class SoundingRulesTests
{
    [Theory]
    [InlineData(AlarmKind.RatingNear, true, null)]
    [InlineData(AlarmKind.RatingNear, false, null)]
    [InlineData(AlarmKind.CirculationStopped, true, AlarmPriority.Warning)]
    [InlineData(AlarmKind.CirculationStopped, false, null)]
    [InlineData(AlarmKind.CoolantLoss, true, AlarmPriority.Critical)]
    [InlineData(AlarmKind.CoolantLoss, false, AlarmPriority.Critical)]
    [InlineData(AlarmKind.Frost, false, AlarmPriority.Warning)]
    [InlineData(AlarmKind.HistoryStopped, false, null)]
    public void Alarm_SoundsByPriorityAndEngine(AlarmKind kind, bool engineRuns, AlarmPriority? expected)
    {
        var picture = SomeTurn.At(100, engineRuns: engineRuns, alarms: SomeTurn.Alarm(kind)).Picture;

        Assert.Equal(expected, new SoundingRules(new OutputOptions()).Sounds(picture));
    }

    [Fact]
    public void EngineUnknown_WarningIsSilent_CriticalIsNot()
    {
        var rules = new SoundingRules(new OutputOptions());

        Assert.Null(
            rules.Sounds(SomeTurn.At(100, engineRuns: null, alarms: SomeTurn.Alarm(AlarmKind.CoolantWeep)).Picture));
        Assert.Equal(
            AlarmPriority.Critical,
            rules.Sounds(SomeTurn.At(100, engineRuns: null, alarms: SomeTurn.Alarm(AlarmKind.ElementDry)).Picture));
    }

    [Fact]
    public void Options_DecideFrostAndRecordAtNight()
    {
        var rules = new SoundingRules(new OutputOptions { FrostSounds = false, HistorySounds = true });

        Assert.Null(rules.Sounds(SomeTurn.At(100, engineRuns: false, alarms: SomeTurn.Alarm(AlarmKind.Frost)).Picture));
        Assert.Equal(
            AlarmPriority.Warning, rules.Sounds(
                SomeTurn.At(100, engineRuns: false, alarms: SomeTurn.Alarm(AlarmKind.HistoryStopped)).Picture));
    }

    [Fact]
    public void Acknowledged_IsSilentAndStillShown()
    {
        var picture = SomeTurn.At(
            100, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss, AlarmState.Acknowledged) with
            {
                IsAcknowledged = true,
            }).Picture;

        Assert.Null(new SoundingRules(new OutputOptions()).Sounds(picture));
        Assert.Equal(LampSign.Seen, SoundingRules.Shows(picture));
    }

    [Fact]
    public void LatchedLossThatNobodyAcknowledged_SoundsAlthoughItsConditionHasGone()
    {
        var loss = SomeTurn.Alarm(AlarmKind.CoolantLoss, AlarmState.Latched, isPresent: false);
        var rules = new SoundingRules(new OutputOptions());

        Assert.Equal(AlarmPriority.Critical, rules.Sounds(SomeTurn.At(100, alarms: loss).Picture));
        Assert.Null(rules.Sounds(SomeTurn.At(100, alarms: loss with { IsAcknowledged = true }).Picture));
    }

    [Fact]
    public void Works_ShowOnTheLampWhenNothingElseDoes()
    {
        var picture = SomeTurn.At(100).Picture with { Works = new WorksReport { IsUnderWay = true } };

        Assert.Equal(LampSign.Works, SoundingRules.Shows(picture));
        Assert.Equal(
            LampSign.Dark, SoundingRules.Shows(SomeTurn.At(100, alarms: SomeTurn.Alarm(AlarmKind.ScaldRisk)).Picture));
    }
}
