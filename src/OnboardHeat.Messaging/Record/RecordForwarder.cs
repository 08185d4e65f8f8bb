using System.Text.Json;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Record;

/// <summary>
/// Hands the record on to a broker that may have been away for days. The record itself is the queue: nothing waits in
/// memory, and the cursor moves when the broker has acknowledged. In order, at least once, and at a bounded rate, so
/// that catching up leaves the line free.
/// </summary>
internal sealed class RecordForwarder(IRecordQueue record, TopicTree topics, string receiver, TimeProvider time)
{
    /// <summary>
    /// Entries between two pauses: with a pause of a second at most 20 a second, some 5 KB/s; a day's record in a few
    /// minutes.
    /// </summary>
    public const int Batch = 20;

    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private Task<long>? _begin;

    /// <summary>
    /// Settles where a broker never seen before begins: at what is newest when the daemon starts, not when the broker
    /// first answers, so that what happens until then is not lost to it. Called at start; waits for the record, not for
    /// the broker.
    /// </summary>
    public Task<long> BeginAsync(CancellationToken cancellationToken) => _begin ??= FirstCursorAsync(cancellationToken);

    /// <summary>Forwards until cancelled or the link fails.</summary>
    public async Task RunAsync(IBrokerLink link, CancellationToken cancellationToken)
    {
        await BeginAsync(cancellationToken).WaitAsync(cancellationToken);
        var cursor = await record.ReadCursorAsync(receiver, cancellationToken) ?? 0;
        while (true)
        {
            await record.WaitForMoreAsync(cursor, cancellationToken);
            var entries = await record.ReadAfterAsync(cursor, Batch, cancellationToken);
            foreach (var entry in entries)
            {
                await link.SendAsync(MessageOf(entry), cancellationToken);
                cursor = entry.Number;
                record.Advance(receiver, cursor);
            }

            await Task.Delay(Pause, time, cancellationToken);
        }
    }

    private async Task<long> FirstCursorAsync(CancellationToken cancellationToken)
    {
        if (await record.ReadCursorAsync(receiver, cancellationToken) is { } known)
        {
            return known;
        }

        var newest = await record.ReadNewestAsync(cancellationToken);
        record.Advance(receiver, newest);
        return newest;
    }

    private OutgoingMessage MessageOf(QueuedEntry entry) => new()
    {
        Topic = topics.Record,
        Payload = JsonSerializer.SerializeToUtf8Bytes(FormOf(entry), MessageJsonContext.Default.RecordForm),
        ContentType = OutgoingMessage.Json,
        IsRetained = false,
        IsAcknowledged = true,
    };

    private static RecordForm FormOf(QueuedEntry entry) => entry switch
    {
        { Event: { } happened } => new RecordForm
        {
            Number = entry.Number,
            Kind = happened.Kind,
            Run = happened.Run,
            ElapsedS = Math.Round(happened.Elapsed.TotalSeconds, 3),
            Time = PictureJson.TimeOf(happened.Utc),
            Name = happened.Name,
            State = happened.State,
            Text = happened.Text,
        },
        { Figures: { } figures } => new RecordForm
        {
            Number = entry.Number,
            Kind = "figures",
            Run = figures.Run,
            ElapsedS = Math.Round(figures.Elapsed.TotalSeconds, 3),
            Time = PictureJson.TimeOf(figures.Utc),
            Figures = FigureNames.All.ToDictionary(name => name, name => figures[name]),
        },
        _ => throw new InvalidOperationException($"Entry {entry.Number} of the record holds nothing."),
    };
}
