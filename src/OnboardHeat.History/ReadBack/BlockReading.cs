using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>
/// The questions that readers put to the shelf; each gives a bounded number of blocks. Damaged ones are passed over.
/// </summary>
internal static class BlockReading
{
    /// <summary>Packed hours of scans in one answer: a few tens of kilobytes.</summary>
    private const int HoursAtOnce = 4;

    /// <summary>Digests in one answer.</summary>
    private const int DigestsAtOnce = 200;

    /// <summary>
    /// All parts of all runs that are wanted, oldest first; files before the one given and runs
    /// before the first are not even read.
    /// </summary>
    public static IReadOnlyList<SpanRef> Spans(RecordBook book, Func<SpanRef, bool> isWanted,
        MonthName? fromFile = null, int firstRun = 0)
    {
        var dates = new Dictionary<int, RunDates>();
        var found = new List<SpanRef>();
        foreach (var name in book.Shelf.Names.Where(name => fromFile is not { } first || name.CompareTo(first) >= 0))
        {
            foreach (var span in book.Shelf.Spans(name).Where(span => span.Run >= firstRun))
            {
                if (!dates.TryGetValue(span.Run, out var dating))
                {
                    dates[span.Run] = dating = book.Shelf.Dates(span.Run, name);
                }

                var part = new SpanRef(name, span.Run, span.FirstNumber, span.LastNumber, span.First, span.Last,
                    dating);
                if (isWanted(part))
                {
                    found.Add(part);
                }
            }
        }

        return found;
    }

    /// <summary>
    /// The parts of some runs. Runs rise from file to file, so files of earlier ones need not be read.
    /// </summary>
    public static IReadOnlyList<SpanRef> SpansOfRuns(RecordBook book, int firstRun, int lastRun)
    {
        MonthName? first = null;
        foreach (var name in book.Shelf.Names.Reverse())
        {
            if (book.Shelf.Spans(name) is [.., var newest] && newest.Run < firstRun)
            {
                break;
            }

            first = name;
        }

        return first is null ? [] : Spans(book, span => span.Run <= lastRun, first, firstRun);
    }

    /// <summary>
    /// Blocks of scans from a number on: some packed hours, or, after the last of them, all minutes that are left.
    /// </summary>
    public static BlockBatch Scans(RecordBook book, SpanRef span, long from)
    {
        var file = book.Shelf.Take(span.File);
        var hours = file.ReadHours(from, HoursAtOnce).Select(hour => hour.Scans);
        var blocks = Opened(hours, BlockKind.Scans)
            .Where(block => block.Header.FirstNumber <= span.LastNumber).ToList();
        if (blocks.Count > 0)
        {
            return new BlockBatch(blocks, blocks[^1].Header.LastNumber + 1,
                blocks[^1].Header.LastNumber >= span.LastNumber);
        }

        blocks.AddRange(Opened(file.ReadMinutes(from, int.MaxValue).Select(minute => minute.Scans), BlockKind.Scans)
            .Where(block => block.Header.FirstNumber <= span.LastNumber));
        return new BlockBatch(blocks, span.LastNumber + 1, IsEnd: true);
    }

    /// <summary>
    /// Entries (or roll-ups) of packed hours from a number on, then the entries of the minutes that are left.
    /// </summary>
    public static BlockBatch Digests(RecordBook book, SpanRef span, long from, BlockKind kind)
    {
        var file = book.Shelf.Take(span.File);
        var digests = file.ReadDigests(from, DigestsAtOnce)
            .Select(digest => kind == BlockKind.Rollups ? digest.Rollups : digest.Entries);
        var blocks = Opened(digests, kind).Where(block => block.Header.FirstNumber <= span.LastNumber).ToList();
        if (blocks.Count > 0)
        {
            return new BlockBatch(blocks, blocks[^1].Header.LastNumber + 1,
                blocks[^1].Header.LastNumber >= span.LastNumber);
        }

        foreach (var minute in file.ReadMinutes(from, int.MaxValue).Where(minute => minute.Number <= span.LastNumber))
        {
            blocks.AddRange(Opened([minute.Entries], BlockKind.Entries));
            if (kind == BlockKind.Rollups)
            {
                blocks.AddRange(Opened([minute.Scans], BlockKind.Scans));
            }
        }

        return new BlockBatch(blocks, span.LastNumber + 1, IsEnd: true);
    }

    /// <summary>
    /// Number of the first packed hour of a part that ends at or after a date, so that reading can begin there.
    /// </summary>
    public static long StartAt(RecordBook book, SpanRef span, DateTimeOffset from)
    {
        var next = span.FirstNumber;
        while (true)
        {
            var batch = Digests(book, span, next, BlockKind.Entries);
            foreach (var block in batch.Blocks)
            {
                if ((span.Dates.At(block.Header.Last) ?? DateTimeOffset.MinValue) >= from)
                {
                    return block.Header.FirstNumber;
                }
            }

            if (batch.IsEnd)
            {
                return batch.Blocks.Count > 0 ? batch.Blocks[^1].Header.FirstNumber : next;
            }

            next = batch.Next;
        }
    }

    private static IEnumerable<OpenedBlock> Opened(IEnumerable<byte[]> stored, BlockKind kind)
    {
        foreach (var block in stored)
        {
            if (Block.TryOpen(block, out var header, out var payload) && header.Kind == kind)
            {
                yield return new OpenedBlock(header, payload);
            }
        }
    }
}
