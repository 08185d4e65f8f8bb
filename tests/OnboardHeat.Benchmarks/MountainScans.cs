using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Benchmarks;

/// <summary>
/// The mountain day without its failure, scan by scan, made once: what is measured is the judging, not the simulation.
/// </summary>
internal static class MountainScans
{
    /// <summary>Seed of the van and of its probes' noise.</summary>
    public const int Seed = 5;

    /// <summary>Channels and signals of the usual van.</summary>
    public static FittedSet Fitted => Kits.Full;

    /// <summary>Every scan of the day.</summary>
    public static IReadOnlyList<Scan> All()
    {
        var van = new SimulatedVan(
            VanTraits.Random(Seed).With(Kits.Full), DrivePlans.MountainDay(hoseComesOff: false), Seed);
        var scans = new List<Scan>();
        while (van.Step())
        {
            scans.Add(van.Scan.Copy());
        }

        return scans;
    }
}
