using System.Diagnostics;
using System.Globalization;
using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;

namespace OnboardHeat.Limits;

/// <summary>Kills a recording process at random moments, over and over on one record, and looks for every minute that it had acknowledged.</summary>
internal static class Kills
{
    private const int Minutes = 2000;
    private const int DraftSeed = 5;

    public static async Task<int> RunAsync(int seed, int kills)
    {
        var random = new Random(seed);
        var drafts = Drafts.Make(DraftSeed, Minutes);
        var folder = Directory.CreateTempSubdirectory("onboardheat-kill9-").FullName;
        int lost = 0, told = 0;
        for (var i = 0; i < kills; i++)
        {
            var acknowledged = await WriteUntilKilledAsync(folder, random);
            using var book = new RecordBook(new CardFolder(folder), Drafts.Limits);
            told += book.Damage.Count > 0 ? 1 : 0;
            var back = Drafts.ReadAll(book);
            var isExact = back.Zip(drafts.SelectMany(draft => draft.Scans)).All(pair => ScanCompare.Difference(pair.First, pair.Second).Length == 0);
            if (back.Count / 4 < acknowledged || !isExact)
            {
                lost++;
                await Console.Error.WriteLineAsync($"kill {i}: {back.Count / 4} minutes on record, {acknowledged} acknowledged; {string.Join("; ", book.Damage)}");
            }

            if (back.Count / 4 > Minutes - 300)
            {
                book.Dispose();
                Directory.Delete(folder, recursive: true);
                Directory.CreateDirectory(folder);
            }
        }

        Directory.Delete(folder, recursive: true);
        return Verdict.None("kills that lost an acknowledged minute", lost, kills, seed) | Verdict.None("damage told after a kill", told, kills, seed);
    }

    /// <summary>The process that is killed: goes on where the record ends, and says what is on the card.</summary>
    public static int Child(string folder)
    {
        var drafts = Drafts.Make(DraftSeed, Minutes);
        using var book = new RecordBook(new CardFolder(folder), Drafts.Limits);
        for (var i = Drafts.ReadAll(book).Count / 4; i < Minutes; i++)
        {
            book.Append(drafts[i].Draft);
            Console.WriteLine(i + 1);
            book.Tidy();
        }

        return 0;
    }

    private static async Task<int> WriteUntilKilledAsync(string folder, Random random)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["kill9-child", folder]) { RedirectStandardOutput = true };
        using var child = Process.Start(start)!;
        var acknowledged = 0;
        var lines = random.Next(1, 40);
        while (await child.StandardOutput.ReadLineAsync() is { } line)
        {
            acknowledged = int.Parse(line, CultureInfo.InvariantCulture);
            if (--lines == 0)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(random.NextDouble() * 3), TimeProvider.System);
                child.Kill();
            }
        }

        await child.WaitForExitAsync();
        return acknowledged;
    }
}
