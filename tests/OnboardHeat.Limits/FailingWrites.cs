using OnboardHeat.Adapters.Tests.History;

namespace OnboardHeat.Limits;

/// <summary>
/// Lets the N-th operation on the card fail, alone or with all after it for a while, N swept. Nothing may fall over,
/// recording goes on by itself, and in the end every scan is on record.
/// </summary>
internal static class FailingWrites
{
    private static readonly string[] s_errors =
        ["No space left on device", "Input/output error", "Read-only file system"];

    public static async Task<int> RunAsync(int seed, int step)
    {
        int tried = 0, holes = 0, stopped = 0;
        for (var n = 1; n < 400; n += step)
        {
            var lasts = n % 2 == 0 ? 1 : 9;
            var card = new SimulatedCard();
            var count = 0;
            card.OnOperation = operation =>
            {
                count++;
                if (count >= n && count < n + lasts)
                {
                    throw new IOException(s_errors[n % s_errors.Length]);
                }
            };
            var drive = new SomeScans(seed).Drive(1, 420, periodS: 20).ToArray();
            var rig = new RecorderRig(card);
            for (var i = 0; i < drive.Length; i += 10)
            {
                await rig.FeedAsync(drive[i..Math.Min(i + 10, drive.Length)]);
                rig.Time.Advance(TimeSpan.FromMinutes(2));
            }

            stopped += rig.House.Current.HistoryStopped.Length > 0 ? 1 : 0;
            await rig.DisposeAsync();
            card.OnOperation = null;
            tried++;
            using var book = new OnboardHeat.History.Files.RecordBook(card, Drafts.Limits);
            var back = Drafts.ReadAll(book);
            if (back.Count != drive.Length || back.Zip(drive).Any(pair => pair.First.Elapsed != pair.Second.Elapsed))
            {
                holes++;
                await Console.Error.WriteLineAsync(
                    $"N {n}: {back.Count} of {drive.Length} scans; {string.Join("; ", rig.Said)}");
            }
        }

        return Verdict.None("records with a hole", holes, tried, seed)
            | Verdict.None("recording still stopped at the end", stopped, tried, seed);
    }
}
