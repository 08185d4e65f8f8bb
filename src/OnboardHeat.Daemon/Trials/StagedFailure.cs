using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Trials;

/// <summary>
/// A failure that did not happen: scans of a van fitted like this one, made by the same physics as the demo, and the
/// alarm that must come of them. Which one depends on what the van can judge.
/// </summary>
internal sealed class StagedFailure
{
    /// <summary>When the hose comes off: the tank is still cool then, so that the lines have much to say.</summary>
    private const double HoseOffAtS = 1500;

    /// <summary>
    /// When the other story's tank begins to run hot, and how fast: no step that screening would doubt.
    /// </summary>
    private const double HotFromS = 60, HotKPerS = 0.1;

    private readonly VanDescription _van;

    private StagedFailure(VanDescription van, AlarmKind expected, double limitS)
    {
        _van = van;
        Expected = expected;
        LimitS = limitS;
    }

    /// <summary>The alarm that must come.</summary>
    public AlarmKind Expected { get; }

    /// <summary>Seconds of the story by which it must have come.</summary>
    public double LimitS { get; }

    /// <summary>The stories that can be told with what is fitted; none without a probe on the tank.</summary>
    public static IReadOnlyList<StagedFailure> For(VanDescription van)
    {
        var stories = new List<StagedFailure>();
        if (van.Fitted.HasTankProbe)
        {
            var risesForS = (van.Tank.ReliefCelsius - 60) / HotKPerS;
            stories.Add(new StagedFailure(van, AlarmKind.TankOverTemperature, HotFromS + risesForS + 120));
        }

        if (van.Fitted.Has(Channel.Flow) && van.Fitted.Has(Channel.Return) && van.Fitted.Has(Channel.TankBottom)
            && van.Fitted.Has(Channel.Tray) && van.Fitted.Has(Signal.EngineRunning))
        {
            stories.Add(new StagedFailure(van, AlarmKind.CoolantLoss, HoseOffAtS + 300));
        }

        return stories;
    }

    /// <summary>The scans of the story, one instance reused.</summary>
    public IEnumerable<Scan> Scans() => Expected == AlarmKind.CoolantLoss ? HoseOff() : HotTank();

    private IEnumerable<Scan> HoseOff()
    {
        var plan = new DrivePlan
        {
            Legs = [new Leg(LegKind.Country, LimitS / 60)],
            EngineCelsius = 60,
            Happenings = [new Happening(HoseOffAtS, HappeningKind.TankFlowHoseOff)],
        };
        var simulated = new SimulatedVan(new VanTraits().With(_van.Fitted), plan, seed: 1);
        while (simulated.Step())
        {
            yield return simulated.Scan;
        }
    }

    private IEnumerable<Scan> HotTank()
    {
        var scan = new Scan();
        for (var elapsedS = 0.0; elapsedS < LimitS; elapsedS += 2)
        {
            scan.Clear();
            scan.Elapsed = TimeSpan.FromSeconds(elapsedS);
            // The last digit of a live probe flickers; one that never does is taken for stuck.
            var flickerK = elapsedS % 6 < 2 ? 0.0625 : 0;
            var tank = Math.Min(60 + (HotKPerS * Math.Max(0, elapsedS - HotFromS)), _van.Tank.ReliefCelsius - 0.5);
            foreach (var channel in Channels.All)
            {
                if (_van.Fitted.Has(channel))
                {
                    scan[channel] = Reading.Of(
                        flickerK + (channel is Channel.TankTop or Channel.TankMiddle or Channel.TankBottom
                        ? tank
                        : 20));
                }
            }

            foreach (var signal in Signals.All)
            {
                if (_van.Fitted.Has(signal))
                {
                    // What heats it in this story is the element: coolant lines that stand cold contradict nothing.
                    scan[signal] = signal == Signal.ElementOn;
                }
            }

            yield return scan;
        }
    }
}
