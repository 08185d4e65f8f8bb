using System.Globalization;
using OnboardHeat.Adapters.Tests.Probes;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Wires;

/// <summary>
/// What the daemon costs on the machine it runs on: memory, processor time, start, and from scan to message. One probe
/// of the fabricated bus is a FIFO: whoever gives the daemon its reading through it knows to the microsecond when the
/// scan read it.
/// </summary>
internal static class Footprint
{
    private const double ResidentMB = 35, ProcessorMsPerS = 3, FirstPictureMs = 60, ScanToMessageMs = 20;

    /// <summary>
    /// Seconds after the start before anything is counted: after ten the daemon lets go of what only the start needed.
    /// </summary>
    private const double WarmUpS = 12;

    /// <summary>Seconds until the first messages are out, so that those counted are of scans alone.</summary>
    private const double SettleS = 3;

    private static readonly Channel[] s_channels =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray];

    /// <summary>
    /// Measures the program, and the plain build beside it when ONBOARDHEAT_PLAIN names its assembly.
    /// </summary>
    public static async Task<int> RunAsync(bool isShort)
    {
        var aot = await MeasureAsync(Bench.Program, isShort);
        Tell(aot, "ahead of time");
        if (Environment.GetEnvironmentVariable("ONBOARDHEAT_PLAIN") is { Length: > 0 } plain)
        {
            // Beside it for comparison only: the release is the ahead-of-time build.
            Tell(await MeasureAsync(["dotnet", plain], isShort), "just in time");
        }

        return Verdict.AtMost("resident memory, MB", aot.ResidentMB, ResidentMB, 0)
            | Verdict.AtMost("processor time, ms a second at a 2-s scan", aot.ProcessorMsPerS, ProcessorMsPerS, 0)
            | Verdict.AtMost("start to first picture at the broker, ms", aot.FirstPictureMs, FirstPictureMs, 0)
            | Verdict.AtMost("scan to message p99, ms", aot.ScanToMessageMs, ScanToMessageMs, 0);
    }

    private static async Task<Figures> MeasureAsync(IReadOnlyList<string> program, bool isShort)
    {
        var starts = new List<double>();
        for (var i = 0; i < (isShort ? 2 : 10); i++)
        {
            starts.Add(await StartAsync(program));
        }

        var resting = await RestAsync(program, isShort ? 8 : 120);
        // The fastest: what else the machine does shall not count.
        return resting with { FirstPictureMs = starts.Min() };
    }

    /// <summary>Start to first picture, milliseconds; the record begins anew each time.</summary>
    private static async Task<double> StartAsync(IReadOnlyList<string> program)
    {
        using var bench = new Bench(s_channels, scanSeconds: 2);
        ShowQuietVan(bench.Tree);
        await bench.Broker.StartAsync();
        using var listener = await Listener.StartAsync(bench.Broker.Port);
        using var daemon = DaemonUnderTest.Start(program, bench.Configuration);
        var picture = await listener.FirstAsync("/picture", static _ => true, 0, 20, "the first picture");
        await daemon.TerminateAsync();
        return 1000 * (picture.At - daemon.StartedAt);
    }

    private static async Task<Figures> RestAsync(IReadOnlyList<string> program, double seconds)
    {
        using var bench = new Bench(s_channels, scanSeconds: 2);
        ShowQuietVan(bench.Tree);
        await bench.Broker.StartAsync();
        using var daemon = DaemonUnderTest.Start(program, bench.Configuration);
        await daemon.SaysAsync("connected", 20);
        await PassAsync(WarmUpS);
        var (used, began) = (daemon.ProcessorS, TimeProvider.System.GetTimestamp());
        for (var second = 0; second < seconds; second++)
        {
            await PassAsync(1);
            _ = daemon.ProcessorS;
        }

        var passedS = TimeProvider.System.GetElapsedTime(began).TotalSeconds;
        var figures = new Figures(daemon.ResidentMB, daemon.PeakMB, 1000 * (daemon.ProcessorS - used) / passedS, 0, 0);
        await daemon.TerminateAsync();
        return figures with { ScanToMessageMs = await ScanToMessageAsync(program, seconds) };
    }

    /// <summary>
    /// The tray's own value is said whenever it has moved by 0.2 K, so a tray that moves with each scan gives one
    /// message a scan.
    /// </summary>
    private static async Task<double> ScanToMessageAsync(IReadOnlyList<string> program, double seconds)
    {
        using var bench = new Bench(s_channels, scanSeconds: 1);
        ShowQuietVan(bench.Tree);
        using var feeder = new FifoFeeder(bench.Tree.FileOf(Channel.Tray), KernelTexts.Of(18), KernelTexts.Of(18.5));
        await bench.Broker.StartAsync();
        using var listener = await Listener.StartAsync(bench.Broker.Port);
        using var daemon = DaemonUnderTest.Start(program, bench.Configuration);
        await daemon.SaysAsync("connected", 20);
        await PassAsync(SettleS);
        var from = (TimeProvider.System.GetUtcNow() - DateTimeOffset.UnixEpoch).TotalSeconds;
        await PassAsync(seconds);
        var said = listener.All.Where(
            one => one.Topic.EndsWith("/channel-celsius/tray", StringComparison.Ordinal)).ToList();
        var reads = feeder.ReadAt.Where(at => at >= from).ToList();
        var spans = said.Where(one => one.At >= from && reads.Count > 0 && one.At >= reads[0])
            .Select(one => 1000 * (one.At - reads.Last(at => at <= one.At))).Order().ToList();
        await daemon.TerminateAsync();
        Console.WriteLine($"{reads.Count} scans, {spans.Count} messages of the tray");
        return spans.Count < reads.Count / 2
            ? double.PositiveInfinity
            : spans[(int)Math.Ceiling(0.99 * spans.Count) - 1];
    }

    private static void ShowQuietVan(WireTree tree)
    {
        foreach (var channel in s_channels)
        {
            tree.Set(channel, 18);
        }
    }

    private static Task PassAsync(double seconds) =>
        Task.Delay(TimeSpan.FromSeconds(seconds), TimeProvider.System, CancellationToken.None);

    private static void Tell(Figures figures, string build) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{build}: {figures.ResidentMB:0.0} MB resident ({figures.PeakMB:0.0} at the start), "
        + $"{figures.ProcessorMsPerS:0.0} ms a second, {figures.FirstPictureMs:0} ms to the first picture, "
        + $"{figures.ScanToMessageMs:0.0} ms from scan to message (p99)"));

    private sealed record Figures(
        double ResidentMB, double PeakMB, double ProcessorMsPerS, double FirstPictureMs, double ScanToMessageMs);
}
