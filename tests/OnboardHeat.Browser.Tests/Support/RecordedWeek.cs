using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.History;
using OnboardHeat.Simulation;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>
/// A week of the simulated van on record: a drive each evening, a night each day, better lagging half-way, notes that
/// would be markup had anybody let them, and a last day whose clock was never known to be right.
/// </summary>
internal static class RecordedWeek
{
    public const string HostileNote =
        "</script><script>document.title='leaked'</script><img src=x onerror=document.title='leaked'>";

    /// <summary>Days before the lagging was changed, and after.</summary>
    private const int DaysEach = 3;

    /// <summary>A turn waits in memory until it is on record: so many at most.</summary>
    private const int TurnsWaiting = 400;

    private static readonly TimeSpan s_shortly = TimeSpan.FromMilliseconds(2);

    public static DateTimeOffset Start { get; } = new(2026, 5, 18, 17, 0, 0, TimeSpan.FromHours(2));

    public static VanDescription Van { get; } = new()
    {
        Fitted = new FittedSet(
            [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings],
            [Signal.EngineRunning, Signal.ValvesClosed]),
        Circuit = new CircuitDescription { Parts = [new CircuitPart("hose", HostileNote, Channel.Flow, 75)] },
    };

    public static async Task WriteAsync(string folder)
    {
        var feed = new TurnFeed();
        var turns = feed.Subscribe("record", 100_000);
        await using var recorder = new Recorder(folder, 24, turns, new HouseStatus(), TimeProvider.System, static _ =>
            { });
        var recording = recorder.RunAsync();
        var change = new PersonAction(ActionKind.Changed, "insulation", "foam all round");
        KeptState kept = KeptState.Fresh;
        foreach (var (run, lossWPerK, action) in ((int, double, PersonAction)[])
            [(1, 0.8, new PersonAction(ActionKind.Note, "", HostileNote)), (2, 0.6, change), (3, 0.6, default)])
        {
            var monitor = new Core.Monitor(Van, kept);
            var van = Drive(run, lossWPerK, action);
            while (van.Step())
            {
                van.Scan.Run = run;
                van.Scan.IsUtcTrusted = run < 3;
                feed.Publish(new Turn(van.Scan.Copy(), monitor.Observe(van.Scan)));
                while (turns.Reader.Count > TurnsWaiting)
                {
                    await Task.Delay(s_shortly, TimeProvider.System, CancellationToken.None);
                }
            }

            kept = monitor.Keep();
        }

        feed.Complete();
        await recording;
    }

    private static SimulatedVan Drive(int run, double lossWPerK, PersonAction action)
    {
        var days = run == 3 ? 1 : DaysEach;
        List<Leg> legs = [];
        List<Happening> happenings = [];
        for (var day = 0; day < days; day++)
        {
            legs.AddRange([new(LegKind.Country, 40), new(LegKind.Parked, 23 * 60), new(LegKind.Idle, 20)]);
            happenings.Add(new Happening((day * 86_400) + 2460, HappeningKind.ValvesClosed, 22 * 3600));
        }

        var traits = VanTraits.Touring(1).With(Van.Fitted);
        var plan = new DrivePlan
        {
            Start = Start.AddDays(run == 3 ? 40 : (run - 1) * DaysEach),
            Legs = legs,
            Happenings = happenings,
            Actions = action == default ? [] : [new PlannedAction(60, action)],
            ScanPeriodS = 20,
            TankBottomCelsius = 30,
            TankTopCelsius = 32,
            EngineCelsius = 60,
        };
        return new SimulatedVan(traits with { Tank = traits.Tank with { LossWPerK = lossWPerK } }, plan, run);
    }
}
