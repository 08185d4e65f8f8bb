using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Supervision;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Adapters.Tests.Messaging;

public sealed class CriticalRetryTests
{
    [Theory]
    [InlineData(true, 5)]
    [InlineData(false, 30)]
    public async Task BrokerLongAway_IsTriedEveryFiveSecondsOnlyWhileACriticalAlarmStands(
        bool isCritical, double waitAtLeastS)
    {
        var time = new FakeTimeProvider();
        var feed = new TurnFeed();
        var tries = 0;
        using var stopping = new CancellationTokenSource();
        var loop = Loop(feed, time, () => tries++);
        var running = loop.RunAsync(stopping.Token);
        for (var s = 0; s < 300; s++)
        {
            await StepAsync(time);
        }

        feed.Publish(SomeTurn.At(300, alarms: isCritical ? [SomeTurn.Alarm(AlarmKind.CoolantLoss)] : []));
        for (var s = 0; s < 10; s++)
        {
            await StepAsync(time);
        }

        // By now it has heard of the turn: how often does it try in the next half minute?
        var before = tries;
        for (var s = 0; s < 30; s++)
        {
            await StepAsync(time);
        }

        Assert.InRange(tries - before, 0, (int)(30 / waitAtLeastS) + 1);
        Assert.True(!isCritical || tries - before >= 5, $"{tries - before} tries in 30 s");
        await stopping.CancelAsync();
        await running;
    }

    private static async Task StepAsync(FakeTimeProvider time)
    {
        time.Advance(TimeSpan.FromSeconds(1));
        for (var i = 0; i < 10; i++)
        {
            await Task.Yield();
        }
    }

    private static MessagingLoop Loop(TurnFeed feed, FakeTimeProvider time, Action tried)
    {
        var topics = new TopicTree("pass-hopper");
        var log = new LineLog();
        var parts = new SessionParts
        {
            Topics = topics,
            Announcer = new Announcer(topics, new PictureJson("pass-hopper", SomeTurn.Fitted), SomeTurn.Fitted),
            Turns = feed.Subscribe("messaging", 8),
            Door = null,
            Moments = new Moments(time),
            Forwarder = null,
            SilenceLimit = TimeSpan.FromSeconds(30),
            Time = time,
            Log = log,
        };
        return new MessagingLoop(
            parts,
            _ =>
            {
                tried();
                throw new BrokerException("connection refused");
            },
            new Outage("camp:1883", topics.Root, time, log),
            new Backoff(new Random(3)));
    }
}
