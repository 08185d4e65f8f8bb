using System.Globalization;
using OnboardHeat.Limits.Daemons;
using OnboardHeat.Limits.Wires;

namespace OnboardHeat.Limits;

internal static class Program
{
    private static async Task<int> Main(string[] args)
    {
        var trial = args.Length > 0 ? args[0] : "";
        var seed = args.Length > 1 && int.TryParse(args[1], out var given) ? given : 1;
        var isShort = Environment.GetEnvironmentVariable("ONBOARDHEAT_SHORT") == "1";
        return trial switch
        {
            "power-cuts" => PowerCuts.Run(seed, isShort ? 500 : 10_000),
            "mutilations" => Mutilations.Run(seed, isShort ? 60 : 200),
            "nth-write-fails" => await FailingWrites.RunAsync(seed, isShort ? 7 : 1),
            "clock-scripts" => await ClockScripts.RunAsync(seed, isShort ? 40 : 1000),
            "kill9" => await DaemonKills.RunAsync(seed, isShort ? 50 : 1000),
            "chaos" => await Chaos.RunAsync(
                seed, isShort, args.Length > 2 && int.TryParse(args[2], out var cases) ? cases : null),
            "memory-year" => await MemoryYear.RunAsync(seed, isShort),
            "disk-writes" => await DiskWrites.RunAsync(seed, isShort),
            "bytes-a-reading" => BytesAReading.Run(seed),
            "van-by-wire" =>
                await VanByWire.RunAsync(
                    seed, isShort, args.ElementAtOrDefault(2), Seconds(args.ElementAtOrDefault(3))),
            "footprint" => await Footprint.RunAsync(isShort),
            "page" => await Page.PageTrial.RunAsync(seed, isShort),
            "charts" => await Charts.RunAsync(seed),
            _ => Usage(),
        };
    }

    private static double? Seconds(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) ? seconds : null;

    private static int Usage()
    {
        Console.Error.WriteLine(
            "TRIAL [SEED]: power-cuts mutilations nth-write-fails clock-scripts kill9 chaos memory-year disk-writes "
                + "bytes-a-reading"
            + " charts van-by-wire footprint page");
        return 64;
    }
}
