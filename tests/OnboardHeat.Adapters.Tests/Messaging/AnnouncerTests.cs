using System.Text;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Adapters.Tests.Messaging;

public sealed class AnnouncerTests
{
    private static readonly TopicTree s_topics = new("pass-hopper");
    private readonly Announcer _announcer = new(
        s_topics, new PictureJson("pass-hopper", SomeTurn.Fitted), SomeTurn.Fitted);

    [Fact]
    public void QuietScan_SaysNothing()
    {
        Topics(0);

        Assert.Empty(Topics(2));
    }

    [Fact]
    public void ChangeWithinTheDeadband_Waits_ChangeBeyondIsSaid()
    {
        Topics(0, showerMinutes: 5.4);

        Assert.DoesNotContain("shower-minutes", Topics(2, showerMinutes: 5.45));
        Assert.Contains("shower-minutes", Topics(4, showerMinutes: 5.51));
    }

    [Fact]
    public void SlowDrift_CannotHideInTheDeadband()
    {
        Topics(0, showerMinutes: 5.4);
        var said = Enumerable.Range(1, 20)
            .Count(i => Topics(2 * i, showerMinutes: 5.4 + (0.02 * i)).Contains("shower-minutes"));

        // 0.4 min in all over a band of 0.1: said each time it has moved that far from what was said, not from the scan
        // before.
        Assert.InRange(said, 3, 4);
    }

    [Fact]
    public void EveryValue_IsRenewedEachMinute_ThePictureEachTenSeconds()
    {
        Topics(0);

        Assert.Equal(["picture"], Topics(10));
        Assert.Contains("tank-top-celsius", Topics(60));
        Assert.Contains("until", Topics(120));
    }

    [Fact]
    public void StandingAlarm_IsRenewedSeldom_AndItsMovingFiguresEachTenSecondsAtMost()
    {
        Topics(0, alarm: SomeTurn.Alarm(AlarmKind.RatingNear));
        var said = Enumerable.Range(1, 29).Count(i => Topics(
            2 * i, alarm: SomeTurn.Alarm(AlarmKind.RatingNear) with { Because = $"in {i} min" })
                .Contains("alarms/rating-near"));

        Assert.Equal(5, said);
        Assert.DoesNotContain(
            "alarms/rating-near",
            Topics(100, alarm: SomeTurn.Alarm(AlarmKind.RatingNear) with { Because = "in 29 min" })[1..]);
    }

    [Fact]
    public void NewState_IsSaidAtOnceWithAWholePicture()
    {
        Topics(0, alarm: SomeTurn.Alarm(AlarmKind.CoolantLoss));

        var topics = Topics(2, alarm: SomeTurn.Alarm(AlarmKind.CoolantLoss, AlarmState.Acknowledged));

        Assert.Equal(["alarms/coolant-loss", "picture"], topics);
    }

    [Fact]
    public void AlarmThatEndedWhileTheBrokerWasAway_IsTakenBackAfterwards()
    {
        Topics(0, alarm: SomeTurn.Alarm(AlarmKind.CoolantLoss));
        _announcer.StartAnew();

        var message = _announcer.After(SomeTurn.At(7200), TimeSpan.FromSeconds(1))
            .First(m => m.Topic.EndsWith("coolant-loss", StringComparison.Ordinal));

        Assert.Contains("\"state\":\"normal\"", Encoding.UTF8.GetString(message.Payload.Span));
        Assert.DoesNotContain("alarms/coolant-loss", Topics(3));
    }

    [Fact]
    public void EveryMessage_ExpiresAfterThreeOfItsPeriods()
    {
        var messages = _announcer.After(SomeTurn.At(0, alarms: SomeTurn.Alarm(AlarmKind.CoolantLoss)), TimeSpan.Zero);

        Assert.All(messages, m => Assert.True(
            m.IsRetained && m.Expiry is { } e && (e == TimeSpan.FromMinutes(3) || e == TimeSpan.FromMinutes(30)),
            m.Topic));
    }

    private string[] Topics(double atS, double showerMinutes = 5.4, AlarmSnapshot? alarm = null) =>
    [
        .. _announcer.After(
            SomeTurn.At(100, showerMinutes, alarms: alarm is null ? [] : [alarm]), TimeSpan.FromSeconds(atS))
            .Select(m => m.Topic[s_topics.Root.Length..]),
    ];
}
