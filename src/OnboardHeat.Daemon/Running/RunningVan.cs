using OnboardHeat.Core;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// What everything in a running daemon meets at: the van, the one door for actions, the feed of turns, how the house
/// fares.
/// </summary>
internal sealed class RunningVan
{
    /// <summary>Turns that wait for whoever looks at the newest one only.</summary>
    private const int LatestTurns = 4;

    public RunningVan(OnboardHeatOptions options)
    {
        Options = options;
        Description = options.Describe(options.Fitted());
        Inbox = new ActionInbox(Wake);
        Latest = new LatestTurn(Feed.Subscribe("latest", LatestTurns));
    }

    public OnboardHeatOptions Options { get; }

    public VanDescription Description { get; }

    public LoopWake Wake { get; } = new();

    public ActionInbox Inbox { get; }

    public HouseStatus House { get; } = new();

    public TurnFeed Feed { get; } = new();

    public LatestTurn Latest { get; }

    /// <summary>The loop that judges this van from what was kept, as the run after it.</summary>
    public JudgingLoop Judge(
        IScanSource source, KeptFileContent kept, IStateKeeper keeper, IServiceNotifier notifier, IUtcTrust trust,
        TimeProvider time) => new(
        new LoopInputs(source, Inbox, House),
        new Monitor(Description, kept.State),
        new RunClock(kept.Run + 1, time, trust),
        Wake,
        new LoopOutputs(Feed, keeper, notifier),
        new ScanPeriods(
            TimeSpan.FromSeconds(Options.OneWire.ScanSeconds), TimeSpan.FromSeconds(Options.OneWire.ParkedScanSeconds)),
        time);
}
