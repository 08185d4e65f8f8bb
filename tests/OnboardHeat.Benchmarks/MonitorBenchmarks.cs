using BenchmarkDotNet.Attributes;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Benchmarks;

/// <summary>A whole mountain day through the monitor; divide by its number of scans.</summary>
[MemoryDiagnoser]
public class MonitorBenchmarks
{
    private static readonly VanDescription s_van = new() { Fitted = MountainScans.Fitted };

    private IReadOnlyList<Scan> _scans = [];

    /// <summary>Makes the scans.</summary>
    [GlobalSetup]
    public void Prepare() => _scans = MountainScans.All();

    /// <summary>Judging alone: no picture.</summary>
    [Benchmark(Baseline = true)]
    public int Judge()
    {
        var monitor = new Monitor(s_van, KeptState.Fresh, ForecastTiming.WhenAsked);
        var changes = 0;
        foreach (var scan in _scans)
        {
            changes += monitor.Judge(scan).Count;
        }

        return changes;
    }

    /// <summary>Pictures, forecasts when asked.</summary>
    [Benchmark]
    public Picture Observe() => Run(ForecastTiming.WhenAsked);

    /// <summary>Pictures, a forecast every ten seconds.</summary>
    [Benchmark]
    public Picture ObserveWithForecasts() => Run(ForecastTiming.EveryTenSeconds);

    private Picture Run(ForecastTiming timing)
    {
        var monitor = new Monitor(s_van, KeptState.Fresh, timing);
        Picture? last = null;
        foreach (var scan in _scans)
        {
            last = monitor.Observe(scan);
        }

        return last!;
    }
}
