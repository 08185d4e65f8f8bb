using OnboardHeat.Core.Scans;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.Files;

/// <summary>
/// Makes one hour of its minutes: the scans in one block, which squeezes far better, with their entries and roll-ups.
/// </summary>
internal static class Packing
{
    /// <summary>Length of a packed block, in elapsed time of its run.</summary>
    public static readonly TimeSpan Hour = TimeSpan.FromHours(1);

    /// <summary>Minutes of one run and one hour; ordered and without a gap.</summary>
    public static StoredHour Pack(IReadOnlyList<StoredMinute> minutes)
    {
        var scans = new List<Scan>();
        var entries = new List<Entry>();
        BlockHeader? first = null;
        BlockHeader last = default;
        BlockHeader firstEntries = default;
        IReadOnlyDictionary<string, long> cursors = new Dictionary<string, long>();
        foreach (var minute in minutes)
        {
            last = Opened(minute.Scans, BlockKind.Scans, out var payload);
            scans.AddRange(ScanCodec.Decode(last, payload.Span));
            var header = Opened(minute.Entries, BlockKind.Entries, out payload);
            entries.AddRange(EntryCodec.Decode(header, payload.Span, out cursors));
            firstEntries = first is null ? header : firstEntries;
            first ??= last;
        }

        var whole = first!.Value with { LastNumber = last.LastNumber, Last = last.Last, Count = scans.Count };
        var spans = Rollups.Of(scans, entries);
        return new StoredHour(
            whole.FirstNumber,
            Block.Seal(whole, ScanCodec.Encode(scans)),
            Block.Seal(
                whole with { Kind = BlockKind.Entries, Count = entries.Count, FirstEntry = firstEntries.FirstEntry },
                EntryCodec.Encode(entries, cursors)),
            Block.Seal(whole with { Kind = BlockKind.Rollups, Count = spans.Count }, RollupCodec.Encode(spans)));
    }

    /// <summary>
    /// How many of these minutes, from the first on, make one block: the same hour of the same run, under one tie to
    /// the wall clock (a clock that steps begins a new block, so that packing forgets no step).
    /// </summary>
    public static int FirstHour(IReadOnlyList<BlockHeader> minutes)
    {
        var count = 0;
        while (count < minutes.Count && minutes[count].Run == minutes[0].Run
            && minutes[count].First.Ticks / Hour.Ticks == minutes[0].First.Ticks / Hour.Ticks
            && minutes[count].Anchor.SaysAlike(minutes[0].Anchor))
        {
            count++;
        }

        return count;
    }

    private static BlockHeader Opened(byte[] stored, BlockKind kind, out ReadOnlyMemory<byte> payload) =>
        Block.TryOpen(stored, out var header, out payload) && header.Kind == kind
            ? header
            : throw new InvalidDataException($"A block of {kind} is damaged.");
}
