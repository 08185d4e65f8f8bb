using System.Globalization;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// Many daemons at once, each through a drive whose hose comes off, while it is killed, its disk fills, a probe hangs
/// and the broker is away. The alarm's message must be there within ten seconds of the scan at which a replay of the
/// same readings raises it, of the restart, or of the broker's return, whichever is last.
/// </summary>
internal static class Chaos
{
    private const int AtOnce = 16;
    private const double WithinS = 10;

    /// <summary>
    /// A case of the short form is given up here: most alarms of this trial come within 40 s of the play.
    /// </summary>
    private const double ShortLengthS = 60;

    public static async Task<int> RunAsync(int seed, bool isShort, int? wanted)
    {
        var cases = wanted ?? (isShort ? 3 : 200);
        var lengthS = isShort ? ShortLengthS : ChaosDrive.LengthS - 4;
        using var places = new SemaphoreSlim(AtOnce);
        var results = new List<Task<ChaosResult>>();
        var withoutDisk = 0;
        foreach (var (drive, i) in ChaosDrive.From(seed * 10_000).Take(cases).Select((drive, i) => (drive, i)))
        {
            await places.WaitAsync();
            var plan = ChaosPlan.Make(new Random(drive.Seed));
            results.Add(Task.Run(async () =>
            {
                try
                {
                    await using var one = new ChaosCase($"chaos-{i}", drive, plan);
                    withoutDisk += one.HasNoDisk ? 1 : 0;
                    return await one.PlayAsync(lengthS);
                }
                finally
                {
                    places.Release();
                }
            }));
        }

        var slack = Environment.GetEnvironmentVariable("CI") == "true" ? 3 : 1;
        var ended = await Task.WhenAll(results);
        var late = ended.Where(result => result.RaisedAtS is not null && !(result.LateS <= WithinS * slack)).ToArray();
        foreach (var result in late.Concat(ended.Where(result => result.RaisedAtS is null)))
        {
            await Console.Error.WriteLineAsync(result.Words);
        }

        var known = ended.Where(result => result.LateS is not null)
            .Select(result => result.LateS!.Value).Order().ToArray();
        if (known.Length > 0)
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  message after it was due: median {known[known.Length / 2]:0.0} s, latest {known[^1]:0.0} s"));
        }

        if (withoutDisk > 0)
        {
            Console.WriteLine($"  {withoutDisk} cases without their full disk: mounting is not allowed here");
        }

        var silent = ended.Where(result => result.RaisedAtS is null).ToArray();
        if (silent.Length > 0)
        {
            Console.WriteLine(
                $"  in {silent.Length} cases a replay of the same readings, restart included, raises nothing: they"
                    + $" hold no message to");
        }

        return Verdict.None("cases whose message did not come in time", late.Length, cases, seed);
    }
}
