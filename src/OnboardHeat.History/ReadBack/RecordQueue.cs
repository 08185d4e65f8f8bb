using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>The record as a queue: entries by their running numbers, read from where a receiver stands.</summary>
internal sealed class RecordQueue(RecordDesk desk) : IRecordQueue
{
    /// <summary>Places remembered, so that a receiver that reads on need not be searched for each time.</summary>
    private const int PlacesKept = 8;

    private readonly Dictionary<long, (MonthName File, long Number)> _places = [];

    public async ValueTask<IReadOnlyList<QueuedEntry>> ReadAfterAsync(long after, int max,
        CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(max, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(max, 1000);
        return await desk.Ask(book => Read(book, after, max), []);
    }

    public async ValueTask<long> ReadNewestAsync(CancellationToken cancellationToken) =>
        await desk.Ask(book => book.NewestEntry, 0);

    public async ValueTask<long?> ReadCursorAsync(string receiver, CancellationToken cancellationToken) =>
        await desk.Ask(book => book.Cursors.TryGetValue(receiver, out var number) ? number : (long?)null, null);

    public void Advance(string receiver, long number) => _ = desk.Ask(
        book =>
        {
            book.Advance(receiver, number);
            return true;
        },
        false);

    public async Task WaitForMoreAsync(long after, CancellationToken cancellationToken)
    {
        while (true)
        {
            var next = desk.NextWrite;
            if (await desk.Ask(book => book.NewestEntry, 0) > after)
            {
                return;
            }

            await next.WaitAsync(cancellationToken);
        }
    }

    private IReadOnlyList<QueuedEntry> Read(RecordBook book, long after, int max)
    {
        var found = new List<QueuedEntry>();
        var place = _places.TryGetValue(after, out var known) ? known : ((MonthName File, long Number)?)null;
        var file = place?.File ?? FileOf(book, after + 1);
        foreach (var span in BlockReading.Spans(book, span => place is not { } begin || IsFrom(span, begin), file))
        {
            var next = place is { } at && at.File == span.File && at.Number > span.FirstNumber ? at.Number
                : span.FirstNumber;
            for (var isEnd = false; !isEnd;)
            {
                var batch = BlockReading.Digests(book, span, next, BlockKind.Entries);
                foreach (var block in batch.Blocks)
                {
                    Take(block, span, after, max, found);
                    if (found.Count >= max)
                    {
                        Remember(found[^1].Number, (span.File, block.Header.FirstNumber));
                        return found;
                    }
                }

                (next, isEnd) = (batch.Next, batch.IsEnd);
            }
        }

        return found;
    }

    /// <summary>
    /// The newest file that begins at or before an entry: a receiver that is nearly up to date needs no older one.
    /// </summary>
    private static MonthName? FileOf(RecordBook book, long entry)
    {
        foreach (var name in book.Shelf.Names.Reverse())
        {
            if (book.Shelf.Take(name).ReadAbout() is { } about && about.FirstEntry <= entry)
            {
                return name;
            }
        }

        return null;
    }

    private static bool IsFrom(SpanRef span, (MonthName File, long Number) begin) =>
        span.File.CompareTo(begin.File) > 0 || (span.File == begin.File && span.LastNumber >= begin.Number);

    private static void Take(in OpenedBlock block, SpanRef span, long after, int max, List<QueuedEntry> found)
    {
        var number = block.Header.FirstEntry;
        if (number + block.Header.Count - 1 <= after)
        {
            return;
        }

        foreach (var entry in EntryCodec.Decode(block.Header, block.Payload.Span, out _))
        {
            if (number > after && found.Count < max)
            {
                var date = span.Dates.At(entry.Elapsed);
                found.Add(entry.Event is { } happened
                    ? new QueuedEntry(number, happened with { Utc = date }, null)
                    : new QueuedEntry(number, null,
                        new RecordedFigures(span.Run, entry.Elapsed, date, entry.Figures!)));
            }

            number++;
        }
    }

    private void Remember(long after, (MonthName File, long Number) place)
    {
        if (_places.Count >= PlacesKept)
        {
            _places.Clear();
        }

        _places[after] = place;
    }
}
