using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Limits;

/// <summary>
/// Lets the wall clock jump about, trusted or not. Order is kept, and whatever is summed up is the same to the last
/// bit.
/// </summary>
internal static class ClockScripts
{
    private static readonly DateTimeOffset[] s_odd =
    [
        DateTimeOffset.UnixEpoch, new(2038, 1, 19, 3, 14, 7, TimeSpan.Zero), SomeScans.Start,
        SomeScans.Start.AddYears(-20), SomeScans.Start.AddYears(30),
    ];

    public static async Task<int> RunAsync(int seed, int scripts)
    {
        int disordered = 0, different = 0;
        for (var i = 0; i < scripts; i++)
        {
            var random = new Random(seed + i);
            var plain = TwoRuns(seed + i);
            var jumping = TwoRuns(seed + i);
            Jump(jumping, random);
            different += Sum(plain) == Sum(jumping) ? 0 : 1;
            var card = new SimulatedCard();
            foreach (var run in jumping.GroupBy(scan => scan.Run))
            {
                await using var rig = new RecorderRig(card);
                await rig.FeedAsync(run);
            }

            using var book = new OnboardHeat.History.Files.RecordBook(card, Drafts.Limits);
            var back = Drafts.ReadAll(book);
            if (back.Count != jumping.Length
                || back.Zip(jumping).Any(pair => ScanCompare.Difference(pair.First, pair.Second).Length > 0))
            {
                disordered++;
                await Console.Error.WriteLineAsync(
                    $"seed {seed + i}: {back.Count} of {jumping.Length} scans, files"
                        + $" {string.Join(' ', book.Shelf.Names)}");
            }
        }

        return Verdict.None("order lost", disordered, scripts, seed)
            | Verdict.None("sums that differ", different, scripts, seed);
    }

    private static Scan[] TwoRuns(int seed)
    {
        var some = new SomeScans(seed);
        return [.. some.Drive(1, 90, periodS: 20), .. some.Drive(2, 90, periodS: 20)];
    }

    /// <summary>Repeated boot times come by themselves: both runs begin at the same label.</summary>
    private static void Jump(Scan[] scans, Random random)
    {
        var shift = TimeSpan.Zero;
        foreach (var scan in scans)
        {
            if (random.Next(12) == 0)
            {
                shift = random.Next(3) == 0
                    ? s_odd[random.Next(s_odd.Length)] - SomeScans.Start
                    : TimeSpan.FromSeconds((random.NextDouble() - 0.5) * Math.Pow(10, random.Next(0, 8)));
            }

            scan.Utc = random.Next(40) == 0 ? null : SomeScans.Start + scan.Elapsed + shift;
            scan.IsUtcTrusted = random.Next(3) > 0;
        }
    }

    private static (long Energy, int Changes) Sum(Scan[] scans)
    {
        var energyJ = 0.0;
        var changes = 0;
        var kept = KeptState.Fresh;
        foreach (var run in scans.GroupBy(scan => scan.Run))
        {
            var monitor = new Monitor(RecorderRig.Van, kept);
            foreach (var scan in run)
            {
                var picture = monitor.Observe(scan);
                energyJ += picture.Tank.StoredJ.Value;
                changes += picture.Changes.Count;
            }

            kept = monitor.Keep();
        }

        return (BitConverter.DoubleToInt64Bits(energyJ), changes);
    }
}
