using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;
using OnboardHeat.History.Blocks;
using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>
/// Charts of 30 days and of a year over a record on disk that holds a packed block for every hour of a year.
/// </summary>
internal static class Charts
{
    private static readonly string[] s_columns = ["tank_top", "tank_bottom", "flow", "return", "surroundings", "tray"];

    public static async Task<int> RunAsync(int seed)
    {
        var folder = Directory.CreateTempSubdirectory("onboardheat-charts-").FullName;
        Fill(folder, seed);
        var end = SomeScans.Start.AddDays(365);

        // The first chart of a process also pays for compiling it; the daemon is compiled ahead of time. So one is
        // drawn first. Each time is the best of three over a record opened anew: other work on the machine shall not
        // count.
        await TimeAsync(folder, SomeScans.Start, SomeScans.Start.AddDays(10));
        double month = double.PositiveInfinity, year = double.PositiveInfinity;
        for (var i = 0; i < 3; i++)
        {
            month = Math.Min(month, await TimeAsync(folder, end.AddDays(-30), end));
            year = Math.Min(year, await TimeAsync(folder, SomeScans.Start, end));
        }

        var review = await ReviewAsync(folder, end.AddDays(-30), end);
        Directory.Delete(folder, recursive: true);
        return Verdict.AtMost("ms for 30 days, 6 channels, 1,000 points", month, 50, seed)
            | Verdict.AtMost("ms for a year", year, 300, seed)
            | Verdict.AtMost("ms for all that the review of 30 days shows, a journey each hour", review, 1000, seed);
    }

    /// <summary>What the review asks for at once: lines, events, and journeys with what goes on at the end.</summary>
    private static async Task<double> ReviewAsync(string folder, DateTimeOffset from, DateTimeOffset to)
    {
        await using var rig = new RecorderRig(new CardFolder(folder));
        await rig.SettleAsync();
        var reader = rig.Recorder.Reader;
        await reader.ReadRunsAsync(CancellationToken.None);
        var began = TimeProvider.System.GetTimestamp();
        await reader.ReadChartAsync(s_columns, from, to, 1000, CancellationToken.None);
        var events = 0;
        await foreach (var _ in reader.ReadEventsAsync(from, to, CancellationToken.None))
        {
            events++;
        }

        var journeys = await new JourneyBook(reader, RecorderRig.Van).ReadAsync(from, to, CancellationToken.None);
        var tookMs = TimeProvider.System.GetElapsedTime(began).TotalMilliseconds;
        Console.WriteLine($"  {journeys.Count} journeys, {events} events");
        return journeys.Count >= 30 * 24 ? tookMs : double.PositiveInfinity;
    }

    private static async Task<double> TimeAsync(string folder, DateTimeOffset from, DateTimeOffset to)
    {
        await using var rig = new RecorderRig(new CardFolder(folder));
        await rig.SettleAsync();

        // The runs and dates of all files are gone through once after a start, behind the recording.
        await rig.Recorder.Reader.ReadRunsAsync(CancellationToken.None);
        var began = TimeProvider.System.GetTimestamp();
        var lines = await rig.Recorder.Reader.ReadChartAsync(s_columns, from, to, 1000, CancellationToken.None);
        var tookMs = TimeProvider.System.GetElapsedTime(began).TotalMilliseconds;
        Console.WriteLine($"  {lines.Sum(line => line.Points.Count)} points");
        return lines.All(line => line.Points.Count > 100) ? tookMs : double.PositiveInfinity;
    }

    /// <summary>Fills a folder with a year: a packed block for every hour.</summary>
    internal static void Fill(string folder, int seed)
    {
        var card = new CardFolder(folder);
        var scans = new SomeScans(seed).Drive(1, 1800).ToArray();
        var payload = ScanCodec.Encode(scans);
        var number = 1L;
        for (var month = 0; month < 12; month++)
        {
            var name = new MonthName(month + 1, MonthName.LabelOf(SomeScans.Start.AddMonths(month)));
            using var file = MonthFile.Open(card, name.Data, name.Log);
            var firstNumber = number;
            var about = new About(About.CurrentFormat, firstNumber, FirstEntryOf(firstNumber), []);
            file.Together(() => file.WriteAbout(about));
            foreach (var hours in Enumerable.Range(month * 730, 730).Chunk(100))
            {
                file.Together(() =>
                {
                    foreach (var hour in hours)
                    {
                        file.Pack(Hour(scans, payload, number, TimeSpan.FromHours(hour)), []);
                        number += 60;
                    }
                });
                file.Checkpoint(isDue: false);
            }

            file.Checkpoint(isDue: true);
        }
    }

    /// <summary>An hour has sixty minutes and, with its journey, one entry more.</summary>
    private static long FirstEntryOf(long number) => ((number - 1) / 60 * 61) + 1;

    private static StoredHour Hour(Scan[] scans, byte[] payload, long number, TimeSpan at)
    {
        var header = new BlockHeader(
            BlockKind.Scans, 1 + (int)(at.TotalHours / 730), number, number + 59, at, at + TimeSpan.FromSeconds(3598),
            scans.Length, 0,
            new TimeAnchor(AnchorQuality.Trusted, at, (SomeScans.Start + at).UtcTicks));
        var spans = new List<RollupSpan>();
        foreach (var part in Rollups.Of(scans, []).Take(6))
        {
            var span = new RollupSpan(at + part.Start);
            for (var column = 0; column < RollupSpan.Columns; column++)
            {
                span.Add(column, part.Count(column), part.Min(column), part.Count(column) == 0 ? 0 : part.Mean(column),
                    part.Max(column));
            }

            spans.Add(span);
        }

        var drive = new Journey
        {
            Type = JourneyType.Heating,
            Run = 1,
            FromS = at.TotalSeconds + 60,
            ToS = at.TotalSeconds + 3000,
            StartCelsius = 20,
            EndCelsius = 60,
            PeakCelsius = 61,
            GainedKWh = 1.1,
            SurroundingsCelsius = 15,
            CoilWPerK = 46,
        };
        Entry[] entries =
        [
            .. Enumerable.Range(0, 60).Select(i =>
                new Entry(at + TimeSpan.FromMinutes(i), null, new double?[FigureNames.All.Count])),
            new Entry(at + TimeSpan.FromMinutes(59.5), JourneyJson.EventOf(drive, at + TimeSpan.FromMinutes(59.5)),
            null),
        ];
        return new StoredHour(
            number, Block.Seal(header, payload),
            Block.Seal(
                header with { Kind = BlockKind.Entries, Count = entries.Length, FirstEntry = FirstEntryOf(number) },
                EntryCodec.Encode(entries, new Dictionary<string, long>())),
            Block.Seal(header with { Kind = BlockKind.Rollups, Count = spans.Count }, RollupCodec.Encode(spans)));
    }
}
