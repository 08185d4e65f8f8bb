using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>One monitor with one kit looking at a drive, and what it said.</summary>
internal sealed class Watcher(Kit kit, VanTraits van, KeptState kept, IReadOnlyList<CircuitPart>? parts = null)
{
    private readonly Scan _scan = new();

    public Kit Kit { get; } = kit;

    public Monitor Monitor { get; } = Made(kit, van, kept, parts);

    public List<Raised> Said { get; } = [];

    private static Monitor Made(Kit kit, VanTraits van, KeptState kept, IReadOnlyList<CircuitPart>? parts)
    {
        var monitor = new Monitor(kit.Describe(van, parts), kept, ForecastTiming.WhenAsked);
        monitor.Circuit.Test.Muted = kit.Muted;
        return monitor;
    }

    public void Observe(Scan scan)
    {
        Kit.Look(scan, _scan);
        foreach (var change in Monitor.Observe(_scan).Changes)
        {
            Said.Add(new Raised(scan.Elapsed.TotalSeconds, change.Definition.Kind, change.Subject, change.IsRaised));
        }
    }
}
