using System.Globalization;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Benchmarks;

/// <summary>
/// Processor time and memory of one scan, measured in seconds rather than BenchmarkDotNet's minutes: the best of
/// several days.
/// </summary>
internal static class JudgingFigures
{
    private const int Days = 7;

    /// <summary>Prints a name and a number a line.</summary>
    public static void Print(TextWriter to)
    {
        var scans = MountainScans.All();
        MeasureWatchPath(scans);
        var (watchUs, quietBytes) = MeasureWatchPath(scans);
        Tell(to, "watch_us", watchUs);
        Tell(to, "watch_quiet_bytes", quietBytes);
        Measure(scans, ForecastTiming.WhenAsked, (monitor, scan) => monitor.Judge(scan));
        var judge = Measure(scans, ForecastTiming.WhenAsked, (monitor, scan) => monitor.Judge(scan));
        var observe = Measure(scans, ForecastTiming.WhenAsked, (monitor, scan) => monitor.Observe(scan));
        var all = Measure(scans, ForecastTiming.EveryTenSeconds, (monitor, scan) => monitor.Observe(scan));
        Tell(to, "judge_us", judge.Microseconds);
        Tell(to, "judge_bytes", judge.Bytes);
        Tell(to, "observe_us", observe.Microseconds);
        Tell(to, "observe_bytes", observe.Bytes);
        Tell(to, "observe_with_forecasts_us", all.Microseconds);
        Tell(to, "observe_with_forecasts_scans_per_s", 1e6 / all.Microseconds);
    }

    private static (double Microseconds, double Bytes) Measure(
        IReadOnlyList<Scan> scans, ForecastTiming timing, Action<Monitor, Scan> act)
    {
        var best = double.PositiveInfinity;
        var bytes = 0L;
        for (var day = 0; day < Days; day++)
        {
            var monitor = Fresh(timing);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var began = Environment.CpuUsage.TotalTime;
            foreach (var scan in scans)
            {
                act(monitor, scan);
            }

            best = Math.Min(best, (Environment.CpuUsage.TotalTime - began).TotalMicroseconds);
            bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        return (best / scans.Count, (double)bytes / scans.Count);
    }

    /// <summary>
    /// Time of the best day, and bytes of the middle one of its scans: an alarm that comes may cost some, a quiet scan
    /// not.
    /// </summary>
    private static (double Microseconds, double Bytes) MeasureWatchPath(IReadOnlyList<Scan> scans)
    {
        var best = double.PositiveInfinity;
        var bytes = new long[scans.Count];
        for (var day = 0; day < Days; day++)
        {
            var path = new WatchPath(new VanDescription { Fitted = MountainScans.Fitted });
            var began = Environment.CpuUsage.TotalTime;
            for (var i = 0; i < scans.Count; i++)
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                path.Observe(scans[i]);
                bytes[i] = GC.GetAllocatedBytesForCurrentThread() - before;
            }

            best = Math.Min(best, (Environment.CpuUsage.TotalTime - began).TotalMicroseconds);
        }

        Array.Sort(bytes);
        return (best / scans.Count, bytes[bytes.Length / 2]);
    }

    private static Monitor Fresh(ForecastTiming timing) =>
        new(new VanDescription { Fitted = MountainScans.Fitted }, KeptState.Fresh, timing);

    private static void Tell(TextWriter to, string name, double value) =>
        to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name} {value:0.##}"));
}
