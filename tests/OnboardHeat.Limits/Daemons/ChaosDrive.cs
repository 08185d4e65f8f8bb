using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Options;
using OnboardHeat.Simulation;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// A simulated drive from shortly before a hose comes off at the tank, in a van that is known from earlier drives and
/// whose tray tells of the loss; and what a replay of given readings says of it.
/// </summary>
internal sealed class ChaosDrive
{
    /// <summary>The play begins so long before the hose comes off.</summary>
    public const double LeadS = 20;

    /// <summary>How long it is played.</summary>
    public const double LengthS = 110;

    /// <summary>Without any chaos the alarm must come so soon, and the tray must be among its reasons.</summary>
    private const double WithinS = 45;

    private static readonly FittedSet s_fitted = Kits.EngineUnknown;

    private ChaosDrive(int seed, VanDescription van, LearntVan learnt, IReadOnlyList<Scan> scans)
    {
        Seed = seed;
        Van = van;
        Learnt = learnt;
        Scans = scans;
    }

    public int Seed { get; }

    public VanDescription Van { get; }

    public LearntVan Learnt { get; }

    /// <summary>What the probes read; elapsed time counts from the beginning of the play.</summary>
    public IReadOnlyList<Scan> Scans { get; }

    public static IEnumerable<Channel> Fitted => Channels.All.ToArray().Where(s_fitted.Has);

    /// <summary>The drives of one seed after another that are what this trial needs.</summary>
    public static IEnumerable<ChaosDrive> From(int seed)
    {
        for (var i = seed; ; i++)
        {
            if (TryMake(i) is { } drive)
            {
                yield return drive;
            }
        }
    }

    /// <summary>
    /// When a replay of these readings raises the alarm, seconds of the play; null: never. A new run number is a
    /// restart.
    /// </summary>
    public double? RaisedAtS(IEnumerable<(double AtS, Scan Scan)> scans, out string because)
    {
        Monitor? monitor = null;
        var run = 0;
        because = "";
        foreach (var (atS, scan) in scans)
        {
            if (monitor is null || scan.Run != run)
            {
                monitor = new Monitor(Van, monitor?.Keep() ?? KeptState.Fresh with { Learnt = Learnt },
                    ForecastTiming.WhenAsked);
                run = scan.Run;
            }

            foreach (var change in monitor.Observe(scan).Changes)
            {
                if (change is { IsRaised: true, Definition.Kind: AlarmKind.CoolantLoss })
                {
                    because = change.Because;
                    return atS;
                }
            }
        }

        return null;
    }

    private static ChaosDrive? TryMake(int seed)
    {
        var kind = seed % 2 == 0 ? ScenarioKind.TankFlowHose : ScenarioKind.TankReturnHose;
        var scenario = Scenarios.Make(kind, seed).With(s_fitted);
        var options = new OnboardHeatOptions();
        options.Tank.VolumeLitres = Math.Round(scenario.Traits.Tank.VolumeLitres);
        var van = options.Describe(s_fitted);
        var scans = new List<Scan>();
        var simulated = scenario.Start();
        var fromS = scenario.EventAtS!.Value - LeadS;
        while (fromS > 0 && simulated.Step() && simulated.Scan.Elapsed.TotalSeconds < fromS + LengthS)
        {
            if (simulated.Scan.Elapsed.TotalSeconds >= fromS)
            {
                var scan = simulated.Scan.Copy();
                scan.Elapsed = TimeSpan.FromSeconds(scan.Elapsed.TotalSeconds - fromS);
                scans.Add(scan);
            }
        }

        var drive = new ChaosDrive(seed, van, Learn(scenario.Traits, van, seed), scans);
        var raisedAtS = drive.RaisedAtS(scans.Select(scan => (scan.Elapsed.TotalSeconds, scan)), out var because);
        return raisedAtS is >= LeadS and <= LeadS + WithinS && because.Contains("tray", StringComparison.Ordinal)
            ? drive : null;
    }

    /// <summary>Two ordinary drives and a night between them, with seeds far from those of the trial.</summary>
    private static LearntVan Learn(VanTraits traits, VanDescription van, int seed)
    {
        var kept = KeptState.Fresh;
        for (var i = 0; i < 3; i++)
        {
            var earlier = 2_000_000 + (seed * 3) + i;
            var plan = i == 1 ? DrivePlans.Night(earlier).With(new Happening(0, HappeningKind.ValvesClosed, 1e9))
                : DrivePlans.Mixed(earlier);
            var simulated = new SimulatedVan(traits, plan, earlier);
            var monitor = new Monitor(van, kept, ForecastTiming.WhenAsked);
            while (simulated.Step())
            {
                monitor.Observe(simulated.Scan);
            }

            kept = KeptState.Fresh with { Learnt = monitor.Keep().Learnt };
        }

        return kept.Learnt;
    }
}
