using System.Text.Json;
using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Messaging.Actions;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Record;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>A broker that was away: the real record is the queue.</summary>
public sealed class CatchUpTests
{
    private const int BreaksAt = 33;

    [Fact]
    public async Task EntriesThatWaited_ComeInOrderAtABoundedRateAndGoOnWhereTheLinkBroke()
    {
        await using var rig = new RecorderRig(new SimulatedCard());
        await rig.FeedAsync(new SomeScans(61).Drive(1, 1800));
        var queue = rig.Recorder.Queue;
        queue.Advance("shore", 0);
        var newest = await queue.ReadNewestAsync(CancellationToken.None);
        Assert.True(newest > BreaksAt, "the trial needs a record that is longer");

        var time = new FakeTimeProvider();
        var forwarder = new RecordForwarder(queue, new TopicTree("pass-hopper"), "shore", time);
        await using var broken = new CountingLink(BreaksAt);
        await DrainAsync(forwarder, broken, time, from: 0, upTo: BreaksAt);
        await using var whole = new CountingLink(long.MaxValue);
        await DrainAsync(forwarder, whole, time, from: BreaksAt - 1, upTo: newest);

        // The entry that the broken link did not acknowledge comes again: at least once, and its number tells.
        Assert.Equal(Enumerable.Range(1, BreaksAt).Select(n => (long)n), broken.Numbers);
        Assert.Equal(Enumerable.Range(BreaksAt, (int)newest - BreaksAt + 1).Select(n => (long)n), whole.Numbers);
    }

    /// <summary>Lets a second pass at a time and sees that no more came in it than are allowed.</summary>
    private static async Task DrainAsync(RecordForwarder forwarder, CountingLink link, FakeTimeProvider time, long from,
        long upTo)
    {
        using var stopping = new CancellationTokenSource();
        var running = forwarder.RunAsync(link, stopping.Token);
        for (var second = 1; link.Numbers.Count < upTo - from; second++)
        {
            var allowed = Math.Min(RecordForwarder.Batch * second, upTo - from);
            await Until.HoldsAsync(() => link.Numbers.Count >= allowed,
                $"{allowed} entries were sent by second {second}");
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
            Assert.Equal(allowed, link.Numbers.Count);
            time.Advance(RecordForwarder.Pause);
        }

        await stopping.CancelAsync();
        await Assert.ThrowsAnyAsync<Exception>(() => running);
    }

    /// <summary>A link that counts what it is given, and breaks at one number before it acknowledges it.</summary>
    private sealed class CountingLink(long breaksAt) : IBrokerLink
    {
        private readonly List<long> _numbers = [];

        public IReadOnlyList<long> Numbers
        {
            get
            {
                lock (_numbers)
                {
                    return [.. _numbers];
                }
            }
        }

        public Task<string> Lost { get; } = new TaskCompletionSource<string>().Task;

        public ChannelReader<Question> Questions { get; } = Channel.CreateUnbounded<Question>().Reader;

        public Task ConnectAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task SubscribeAsync(string filter, CancellationToken cancellationToken) => Task.CompletedTask;

        public Task DisconnectAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;

        public Task SendAsync(OutgoingMessage message, CancellationToken cancellationToken)
        {
            using var entry = JsonDocument.Parse(message.Payload);
            var number = entry.RootElement.GetProperty("number").GetInt64();
            lock (_numbers)
            {
                _numbers.Add(number);
            }

            return number == breaksAt ? throw new BrokerException("the line broke") : Task.CompletedTask;
        }
    }
}
