using System.Runtime.CompilerServices;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>
/// Reads the record for pages, reports and exports. Blocks come from the owner's thread; they are unpacked on the
/// reader's.
/// </summary>
internal sealed class RecordReader(RecordDesk desk) : IRecordReader
{
    public async IAsyncEnumerable<Scan> ReadScansAsync(
        DateTimeOffset from, DateTimeOffset to, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var span in await ScanSpansAsync(book => BlockReading.Spans(book, span => span.Touches(from, to))))
        {
            await foreach (var scan in ScansOf(span, from, to, cancellationToken))
            {
                if (IsBetween(span, scan.Elapsed, from, to))
                {
                    yield return scan;
                }
            }
        }
    }

    public async IAsyncEnumerable<Scan> ReadRunScansAsync(
        int firstRun, int lastRun, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var span in await ScanSpansAsync(book => BlockReading.SpansOfRuns(book, firstRun, lastRun)))
        {
            await foreach (
                var scan in ScansOf(span, DateTimeOffset.MinValue, DateTimeOffset.MaxValue, cancellationToken))
            {
                yield return scan;
            }
        }
    }

    public async IAsyncEnumerable<RecordedEvent> ReadEventsAsync(
        DateTimeOffset from, DateTimeOffset to, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var (span, entry) in EntriesAsync(from, to, cancellationToken))
        {
            if (entry.Event is { } happened)
            {
                yield return happened with { Utc = span.Dates.At(entry.Elapsed) };
            }
        }
    }

    public async IAsyncEnumerable<RecordedFigures> ReadFiguresAsync(
        DateTimeOffset from, DateTimeOffset to, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var (span, entry) in EntriesAsync(from, to, cancellationToken))
        {
            if (entry.Figures is { } figures)
            {
                yield return new RecordedFigures(span.Run, entry.Elapsed, span.Dates.At(entry.Elapsed), figures);
            }
        }
    }

    public async ValueTask<IReadOnlyList<RecordedRun>> ReadRunsAsync(CancellationToken cancellationToken)
    {
        var runs = new List<RecordedRun>();
        foreach (var span in await SpansAsync(_ => true))
        {
            var run = runs.Count > 0 && runs[^1].Run == span.Run ? runs[^1] : null;
            var whole = new RecordedRun(
                span.Run, run?.FirstElapsed ?? span.First, span.Last, run?.From ?? span.Dates.At(span.First),
                span.Dates.At(span.Last),
                span.Dates.Dating);
            if (run is null)
            {
                runs.Add(whole);
            }
            else
            {
                runs[^1] = whole;
            }
        }

        return runs;
    }

    public async ValueTask<IReadOnlyList<ChartLine>> ReadChartAsync(
        IReadOnlyList<string> columns, DateTimeOffset from, DateTimeOffset to, int points,
        CancellationToken cancellationToken)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(points, 10_000);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(to, from);
        var drawing = new ChartDrawing(columns, from, to, points);
        foreach (var span in await SpansAsync(span => span.Touches(from, to)))
        {
            var kind = drawing.IsOfRollups ? BlockKind.Rollups : BlockKind.Scans;
            await foreach (var block in BlocksOf(span, kind, from, to, cancellationToken))
            {
                drawing.Add(span.Dates, block);
            }

            if (!drawing.IsOfRollups)
            {
                await foreach (var block in BlocksOf(span, BlockKind.Entries, from, to, cancellationToken))
                {
                    drawing.Add(span.Dates, block);
                }
            }
        }

        return drawing.Lines();
    }

    public async ValueTask<IReadOnlyList<RecordedMonth>> ReadMonthsAsync(CancellationToken cancellationToken) =>
        await desk.Ask<IReadOnlyList<RecordedMonth>>(book => book.Months(), []);

    private Task<IReadOnlyList<SpanRef>> SpansAsync(Func<SpanRef, bool> isWanted) =>
        desk.Ask(book => BlockReading.Spans(book, isWanted), []);

    /// <summary>Scans are read for exports: one that lacks some because the card failed must not look whole.</summary>
    private async Task<IReadOnlyList<SpanRef>> ScanSpansAsync(Func<RecordBook, IReadOnlyList<SpanRef>> spans) =>
        await desk.Ask<IReadOnlyList<SpanRef>?>(spans, null) ?? throw Closed();

    private static IOException Closed() =>
        new("the record is not open: the card fails, or the daemon has only just begun");

    private async IAsyncEnumerable<(SpanRef Span, Entry Entry)> EntriesAsync(
        DateTimeOffset from, DateTimeOffset to, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        foreach (var span in await SpansAsync(span => span.Touches(from, to)))
        {
            await foreach (var block in BlocksOf(span, BlockKind.Entries, from, to, cancellationToken))
            {
                foreach (var entry in EntryCodec.Decode(block.Header, block.Payload.Span, out _))
                {
                    if (IsBetween(span, entry.Elapsed, from, to))
                    {
                        yield return (span, entry);
                    }
                }
            }
        }
    }

    private async IAsyncEnumerable<Scan> ScansOf(
        SpanRef span, DateTimeOffset from, DateTimeOffset to,
        [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var block in BlocksOf(span, BlockKind.Scans, from, to, cancellationToken))
        {
            foreach (var scan in ScanCodec.Decode(block.Header, block.Payload.Span))
            {
                yield return scan;
            }
        }
    }

    /// <summary>Blocks of a part that may lie between two dates.</summary>
    private async IAsyncEnumerable<OpenedBlock> BlocksOf(
        SpanRef span, BlockKind kind, DateTimeOffset from, DateTimeOffset to,
        [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var isWhole = (span.Dates.At(span.First) ?? DateTimeOffset.MinValue) >= from;
        var next = isWhole ? span.FirstNumber
            : await desk.Ask(book => BlockReading.StartAt(book, span, from), span.FirstNumber);
        var coming = BatchAt(span, kind, next);
        while (true)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var batch = await coming ?? throw Closed();

            // The owner's thread reads on while this one unpacks.
            coming = batch.IsEnd ? Task.FromResult<BlockBatch?>(BlockBatch.Empty) : BatchAt(span, kind, batch.Next);
            foreach (var block in batch.Blocks)
            {
                if ((span.Dates.At(block.Header.First) ?? DateTimeOffset.MinValue) > to)
                {
                    yield break;
                }

                yield return block;
            }

            if (batch.IsEnd)
            {
                yield break;
            }
        }
    }

    /// <summary>
    /// Null where the record is closed and scans were asked for; charts and lists are then merely short.
    /// </summary>
    private Task<BlockBatch?> BatchAt(SpanRef span, BlockKind kind, long from) => desk.Ask<BlockBatch?>(
        book => kind == BlockKind.Scans ? BlockReading.Scans(book, span, from)
        : BlockReading.Digests(book, span, from, kind),
        kind == BlockKind.Scans ? null : BlockBatch.Empty);

    private static bool IsBetween(SpanRef span, TimeSpan elapsed, DateTimeOffset from, DateTimeOffset to) =>
        (span.Dates.At(elapsed) ?? DateTimeOffset.MinValue) is var at && at >= from && at <= to;
}
