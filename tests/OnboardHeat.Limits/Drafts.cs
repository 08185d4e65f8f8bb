using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>
/// Small minutes to write, twenty minutes apart so that packing comes often, over the turn of a month; and how to read
/// them back.
/// </summary>
internal static class Drafts
{
    /// <summary>Trials write little: the limits of a real card are not theirs.</summary>
    public static RecordLimits Limits { get; } = new(24, 0);

    public static IReadOnlyList<(MinuteDraft Draft, IReadOnlyList<Scan> Scans)> Make(int seed, int count)
    {
        var some = new Adapters.Tests.History.SomeScans(seed);
        var start = new DateTimeOffset(2026, 5, 31, 18, 0, 0, TimeSpan.Zero);
        var made = new List<(MinuteDraft, IReadOnlyList<Scan>)>();
        for (var i = 0; i < count; i++)
        {
            var run = 1 + (i / 17);
            var scans = some.Drive(run, 4, fromS: (i % 17) * 1200, start: start + TimeSpan.FromSeconds(run * 25_000))
                .ToArray();
            var header = new BlockHeader(
                BlockKind.Scans, run, 0, 0, scans[0].Elapsed, scans[^1].Elapsed, scans.Length, 0,
                new TimeAnchor(AnchorQuality.Trusted, scans[^1].Elapsed, scans[^1].Utc!.Value.UtcTicks));
            var happened = new RecordedEvent(run, scans[0].Elapsed, null, "alarm", $"trial-{i}", "raised", "why");
            made.Add((new MinuteDraft(header, ScanCodec.Encode(scans), [new Entry(scans[0].Elapsed, happened, null)]),
                scans));
        }

        return made;
    }

    /// <summary>All scans on record, by run and elapsed time.</summary>
    public static List<Scan> ReadAll(RecordBook book)
    {
        var scans = new List<Scan>();
        foreach (var name in book.Shelf.Names)
        {
            var file = book.Shelf.Take(name);
            var blocks = file.ReadHours(0, int.MaxValue).Select(hour => hour.Scans)
                .Concat(file.ReadMinutes(0, int.MaxValue).Select(minute => minute.Scans));
            foreach (var stored in blocks)
            {
                if (Block.TryOpen(stored, out var header, out var payload))
                {
                    scans.AddRange(ScanCodec.Decode(header, payload.Span));
                }
            }
        }

        return scans;
    }

    /// <summary>Writes minutes; tells after each how many are on the card.</summary>
    public static void Write(IRecordDisk card, IReadOnlyList<(MinuteDraft Draft, IReadOnlyList<Scan> Scans)> drafts,
        Action<int> done)
    {
        using var book = new RecordBook(card, Limits);
        for (var i = 0; i < drafts.Count; i++)
        {
            book.Append(drafts[i].Draft);
            done(i + 1);
            book.Tidy();
        }
    }
}
