using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>
/// Size on disk of readings: six probes every two seconds, the file's growth with everything in it, an open hour and
/// packed ones.
/// </summary>
internal static class BytesAReading
{
    private const int ReadingsAScan = 6;
    private const int ScansAMinute = 30;

    public static int Run(int seed)
    {
        var open = new SimulatedCard();
        var empty = Grow(open, seed, 1, isTidied: false);
        var hour = Grow(open, seed, 59, isTidied: false) - empty;
        var packed = new SimulatedCard();
        var drive = new SomeScans(seed).Drive(1, 1800).ToArray();
        Console.WriteLine(
            $"  payload of an hour's scans: {ScanCodec.Encode(drive).Length / 1800.0 / ReadingsAScan:0.000} bytes a"
                + $" reading");
        Console.WriteLine($"  payload of an hour's scans in all: {ScanCodec.Encode(drive).Length} bytes");
        var first = Grow(packed, seed, 61, isTidied: true);
        var day = Grow(packed, seed, 24 * 60, isTidied: true) - first;
        return Verdict.AtMost("bytes a reading, open hour", hour / (59.0 * ScansAMinute * ReadingsAScan), 3, seed)
            | Verdict.AtMost("bytes a reading, packed", day / (24.0 * 60 * ScansAMinute * ReadingsAScan), 0.8, seed);
    }

    /// <summary>Adds minutes and gives the size of the data file after a checkpoint.</summary>
    private static long Grow(SimulatedCard card, int seed, int minutes, bool isTidied)
    {
        using var book = new RecordBook(card, Drafts.Limits);
        var fromS = Drafts.ReadAll(book) is { Count: > 0 } had ? Math.Ceiling(had[^1].Elapsed.TotalSeconds + 1) : 0;
        foreach (var scans in new SomeScans(seed).Drive(1, minutes * ScansAMinute, fromS: fromS).Chunk(ScansAMinute))
        {
            book.Append(Draft(scans));
            if (isTidied)
            {
                book.Tidy();
            }
        }

        book.Close();
        return card.LengthOf(book.Shelf.Newest!.Value.Data);
    }

    private static MinuteDraft Draft(Scan[] scans)
    {
        var header = new BlockHeader(
            BlockKind.Scans, 1, 0, 0, scans[0].Elapsed, scans[^1].Elapsed, scans.Length, 0,
            new TimeAnchor(AnchorQuality.Trusted, scans[^1].Elapsed, scans[^1].Utc!.Value.UtcTicks));
        double?[] figures =
            [.. FigureNames.All.Select((_, i) => (double?)(scans[0][Channel.TankTop].Value * (i + 1) / 17))];
        return new MinuteDraft(header, ScanCodec.Encode(scans), [new Entry(scans[^1].Elapsed, null, figures)]);
    }
}
