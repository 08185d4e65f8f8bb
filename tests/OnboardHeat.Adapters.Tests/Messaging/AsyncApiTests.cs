using OnboardHeat.Adapters.Tests.Support;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// The published description against what a client that is not ours received from a broker that is not ours.
/// </summary>
public sealed class AsyncApiTests
{
    private static readonly AsyncApiFile s_file = new();

    [Fact]
    public async Task EveryMessageReceived_IsAsDescribed_AndEveryChannelDescribedComes()
    {
        await using var broker = await Mosquitto.StartAsync();
        var options = broker.Options;
        options.AcceptActions = true;
        await using var listener = await MosquittoListener.StartAsync(
            broker.Port, RunningWorker.Root + "#", "--retain-as-published");
        await using var worker = new RunningWorker(options, new ShortRecord());
        await worker.ConnectedAsync();

        worker.Publish(SomeTurn.At(
            100, alarms: [
                SomeTurn.Alarm(AlarmKind.CoolantLoss), SomeTurn.Alarm(AlarmKind.RatingNear, subject: "heater-hose")]));
        await listener.FirstAsync(
            r => r.Topic.EndsWith("/alive", StringComparison.Ordinal) && r.Payload == "yes", "alive yes");
        await listener.FirstAsync("/channel-celsius/tray");
        await listener.FirstAsync("/moment");
        await listener.FirstAsync(
            r => r.Payload.Contains("\"figures\":{", StringComparison.Ordinal), "figures of the record");

        var received = listener.All.Where(r => r.Payload != "no").ToList();
        var channels = received.Select(r => (Message: r, Channels: s_file.ChannelsFor(r.Topic))).ToList();
        Assert.All(channels, r => Assert.True(
            r.Channels.Count == 1, $"{r.Message.Topic} is described {r.Channels.Count} times"));
        Assert.Empty(channels.SelectMany(r => s_file.Differences(r.Channels[0], r.Message)));
        Assert.Empty(s_file.SentChannels.Except(channels.Select(r => r.Channels[0])));
    }

    [Fact]
    public void EveryAlarmActionAndChannelOfTheCore_IsDescribed()
    {
        string[] topics =
        [
            .. AlarmTable.Rows.Select(row => $"alarms/{row.Name}"),
            .. AlarmTable.Rows.Select(row => $"alarms/{row.Name}/part-1"),
            .. Enum.GetValues<ActionKind>().Select(kind => $"actions/{PersonAction.NameOf(kind)}"),
            .. Channels.All.ToArray().Select(channel => $"channel-celsius/{Channels.NameOf(channel)}"),
        ];

        Assert.All(topics, topic => Assert.Single(s_file.ChannelsFor(RunningWorker.Root + topic)));
        Assert.Empty(s_file.ChannelsFor(RunningWorker.Root + "alarms/no-such-alarm"));
    }

    [Fact]
    public void MessageThatIsNotAsDescribed_IsFound()
    {
        var wrong = new Received(RunningWorker.Root + "alive", "maybe", false, 0, "text/html", "0", "5", "", "");

        // Content type, payload format, expiry, retain, quality of service, payload: a comparison that finds fewer is
        // blind.
        Assert.Equal(6, s_file.Differences("alive", wrong).Count());
    }

    /// <summary>A record of two entries: an event and the figures of a moment.</summary>
    private sealed class ShortRecord : IRecordQueue
    {
        private static readonly QueuedEntry[] s_entries =
        [
            new(1, new RecordedEvent(
                3, TimeSpan.FromSeconds(90), SomeTurn.Start, "alarm", "coolant-loss", "raised",
                "tray rose 9 K in 8 s"), null),
            new(2, null, new RecordedFigures(3, TimeSpan.FromSeconds(95), null, [1.2, 5.4, 4.8, 5.9, null, 0.71])),
        ];

        private long _cursor;

        public ValueTask<IReadOnlyList<QueuedEntry>> ReadAfterAsync(
            long after, int max, CancellationToken cancellationToken) =>
            ValueTask.FromResult<IReadOnlyList<QueuedEntry>>([.. s_entries.Where(e => e.Number > after).Take(max)]);

        public ValueTask<long> ReadNewestAsync(CancellationToken cancellationToken) => ValueTask.FromResult(2L);

        public ValueTask<long?> ReadCursorAsync(string receiver, CancellationToken cancellationToken) =>
            ValueTask.FromResult<long?>(_cursor);

        public void Advance(string receiver, long number) => _cursor = number;

        public Task WaitForMoreAsync(long after, CancellationToken cancellationToken) =>
            after < s_entries[^1].Number ? Task.CompletedTask
                : Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancellationToken);
    }
}
