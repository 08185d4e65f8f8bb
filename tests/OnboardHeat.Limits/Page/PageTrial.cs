using OnboardHeat.Browser.Tests.Support;
using OnboardHeat.Simulation;

namespace OnboardHeat.Limits.Page;

/// <summary>
/// The page of a whole daemon (<c>ONBOARDHEAT_PROGRAM</c>, the ahead-of-time build) under what the world may do to it:
/// what is open, what a browser waits, ten thousand senseless requests, sixteen pages, an end in the middle of it.
/// </summary>
internal static class PageTrial
{
    private const int Pages = 16;

    public static async Task<int> RunAsync(int seed, bool isShort)
    {
        var program = Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM");
        if (string.IsNullOrEmpty(program))
        {
            Console.Error.WriteLine(
                "ONBOARDHEAT_PROGRAM names the ahead-of-time build to try; tests/limits/page makes one.");
            return 64;
        }

        await using var van = new ReplayedVan(DrivePlans.MountainDay(hoseComesOff: false), 560, 90);
        using var daemon = DaemonUnderTrial.Start(program, van);
        await daemon.UpAsync();
        var missed = Ports(daemon, van, seed);
        missed |= await SixteenAsync(daemon, seed, isShort);
        missed |= await FirstPictureAsync(daemon, seed);
        missed |= await FuzzAsync(daemon, seed, isShort ? 1000 : 10_000);
        return missed | await EndAsync(daemon, seed);
    }

    // SECURITY.md names every door: the page's port on loopback, nothing else.
    private static int Ports(DaemonUnderTrial daemon, ReplayedVan van, int seed)
    {
        var open = daemon.Process.Ports();
        var unexpected = open.Where(port => port != $"tcp 127.0.0.1:{van.Port}").ToArray();
        Console.WriteLine($"  open: {string.Join(", ", open)}");
        return Verdict.None("ports that are not documented", unexpected.Length, open.Count, seed)
            | Verdict.None("documented ports that are closed", open.Count == unexpected.Length ? 1 : 0, 1, seed);
    }

    private static async Task<int> FirstPictureAsync(DaemonUnderTrial daemon, int seed) =>
        Verdict.AtMost(
            "ms to the first picture in a new browser page, median of 5",
            await FirstPicture.MeasureMsAsync(daemon.Address), 300, seed);

    private static async Task<int> FuzzAsync(DaemonUnderTrial daemon, int seed, int count)
    {
        await using var listener = LivePage.Open(daemon.Address);
        await listener.HeardAsync(2);
        var fuzz = new Fuzz(daemon, await daemon.PairAsync(), seed);
        var answers = await fuzz.RunAsync(count);
        await listener.HeardAsync(2);
        Console.WriteLine("  " + string.Join(", ", answers.OrderBy(a => a.Key).Select(a => $"{a.Value} of {a.Key}")));
        return Verdict.None("fuzzed requests answered with 500", answers.GetValueOrDefault(500), count, seed)
            | Verdict.AtMost(
                "ms that a scan was late meanwhile, at most", 1000 * listener.LatestByS(periodS: 1), 200, seed);
    }

    private static async Task<int> SixteenAsync(DaemonUnderTrial daemon, int seed, bool isShort)
    {
        var span = TimeSpan.FromSeconds(isShort ? 4 : 60);
        var idleMs = await daemon.Process.CpuMsOverAsync(span);
        var pages = await OpenAllAsync(daemon);
        var heard = pages.Sum(page => page.Count);
        var busyMs = await daemon.Process.CpuMsOverAsync(span);
        var megabytes = daemon.Process.ResidentMegabytes();
        heard = pages.Sum(page => page.Count) - heard;
        await CloseAllAsync(pages);
        Console.WriteLine($"  {(double)heard / Pages:0.0} pictures to each page in {span.TotalSeconds:0} s");
        Console.WriteLine($"  {idleMs / span.TotalSeconds:0.0} ms a second without a page, "
            + $"{busyMs / span.TotalSeconds:0.0} with {Pages}");
        var eachMs = Math.Max(0, busyMs - idleMs) / span.TotalSeconds / Pages;
        return Verdict.AtMost($"MB resident with {Pages} live pages", megabytes, 45, seed)
            | Verdict.AtMost("ms of processor a second for a live page", eachMs, 1, seed);
    }

    private static async Task<int> EndAsync(DaemonUnderTrial daemon, int seed)
    {
        var pages = await OpenAllAsync(daemon);
        Console.WriteLine(
            $"  {daemon.Process.ResidentMegabytes():0.0} MB resident with {Pages} live pages after all that");
        var endS = await daemon.TerminateAsync();
        await CloseAllAsync(pages);
        return Verdict.AtMost($"s from SIGTERM to the end with {Pages} live pages", endS, 6, seed);
    }

    private static async Task<LivePage[]> OpenAllAsync(DaemonUnderTrial daemon)
    {
        var pages = Enumerable.Range(0, Pages).Select(_ => LivePage.Open(daemon.Address)).ToArray();
        foreach (var page in pages)
        {
            await page.HeardAsync(1);
        }

        return pages;
    }

    private static async Task CloseAllAsync(LivePage[] pages)
    {
        foreach (var page in pages)
        {
            await page.DisposeAsync();
        }
    }
}
