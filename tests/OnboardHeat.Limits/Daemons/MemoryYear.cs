using System.Globalization;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Daemons;

/// <summary>Resident memory of the whole daemon that runs over a record of a year.</summary>
internal static class MemoryYear
{
    private const double LimitMB = 40;

    public static async Task<int> RunAsync(int seed, bool isShort)
    {
        await using var broker = new TrialBroker(DaemonVan.FreePort(), (_, _) => { });
        await broker.StartAsync();
        using var van =
            new DaemonVan("year", broker.Port, [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return], 1);
        foreach (var channel in van.Roms.Keys)
        {
            van.Set(channel, 40);
        }

        Charts.Fill(van.State, seed);
        using var daemon = DaemonProcess.Start(van);
        if (await daemon.ReadyAsync() is null)
        {
            await Console.Error.WriteLineAsync(daemon.Log);
            return 1;
        }

        var most = 0.0;
        for (var second = 0; second < (isShort ? 8 : 60); second++)
        {
            await Task.Delay(TimeSpan.FromSeconds(1), TimeProvider.System);
            most = Math.Max(most, StatusMB(daemon.Process.Id, "VmRSS:"));
        }

        var bytes = Directory.EnumerateFiles(van.State, "*.db").Sum(file => new FileInfo(file).Length);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  record of {bytes / 1e6:0} MB; high-water mark {StatusMB(daemon.Process.Id, "VmHWM:"):0.0} MB; of its"
                + $" own"
            + $" {StatusMB(daemon.Process.Id, "RssAnon:"):0.0} MB, pages of the program"
            + $" {StatusMB(daemon.Process.Id, "RssFile:"):0.0} MB"));
        if (daemon.Log.Contains("set aside", StringComparison.Ordinal))
        {
            // A record that is not taken as sound is another trial than this one.
            await Console.Error.WriteLineAsync(daemon.Log);
            return 1;
        }

        return DaemonProcess.IsAheadOfTime
            ? Verdict.AtMost("MB resident with a year of history, the most of every second", most, LimitMB, seed)
            : Verdict.AtMost("MB resident of the plain build (held only for the ahead-of-time build)", most,
                10 * LimitMB, seed);
    }

    private static double StatusMB(int process, string field)
    {
        var line = File.ReadLines($"/proc/{process}/status").First(l => l.StartsWith(field, StringComparison.Ordinal));
        return double.Parse(line.AsSpan(field.Length, line.Length - field.Length - 3).Trim(),
            CultureInfo.InvariantCulture) / 1000;
    }
}
