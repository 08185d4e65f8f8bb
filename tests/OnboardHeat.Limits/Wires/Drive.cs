using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.Simulation;

namespace OnboardHeat.Limits.Wires;

/// <summary>What the probes of a drive read, second by second, for a fabricated bus to show.</summary>
internal sealed class Drive
{
    /// <summary>
    /// When the hose comes off, seconds from the start: on the way down the valley, with the engine warming up. The
    /// lines then say that it runs, which no GPIO line can on a machine without one.
    /// </summary>
    public const double HoseOffAtS = 800;

    private readonly List<Scan> _scans = [];

    /// <summary>The places that have a probe.</summary>
    public IReadOnlyList<Channel> Fitted { get; private init; } = [];

    /// <summary>
    /// The morning of our own mountain day, on which the flow hose comes off while the engine warms up.
    /// </summary>
    public static Drive OfSimulation(int seed)
    {
        var plan = DrivePlans.MountainDay(hoseComesOff: false).With(
            new Happening(HoseOffAtS, HappeningKind.TankFlowHoseOff));
        var van = new SimulatedVan(
            VanTraits.Touring(seed).With(Kits.EngineUnknown), plan with { ScanPeriodS = 1 }, seed);
        var drive = new Drive { Fitted = FittedOf(Kits.EngineUnknown) };
        while (van.Step())
        {
            drive._scans.Add(van.Scan.Copy());
        }

        return drive;
    }

    /// <summary>A recorded drive.</summary>
    public static Drive OfRecording(string file)
    {
        using var reader = RecordingReader.Open(file, File.OpenRead(file));
        var drive = new Drive { Fitted = FittedOf(reader.Fitted) };
        var scan = new Scan();
        while (reader.Read(scan))
        {
            drive._scans.Add(scan.Copy());
        }

        return drive;
    }

    /// <summary>The scan that was newest at that moment.</summary>
    public Scan At(double elapsedS)
    {
        var (low, high) = (0, _scans.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _scans[middle].Elapsed.TotalSeconds <= elapsedS ? (middle, high) : (low, middle - 1);
        }

        return _scans[low];
    }

    private static IReadOnlyList<Channel> FittedOf(FittedSet fitted) =>
        [.. Channels.All.ToArray().Where(channel => fitted.Has(channel))];
}
