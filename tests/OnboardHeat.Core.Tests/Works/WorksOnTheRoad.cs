using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Works;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Works;

/// <summary>
/// A whole job on the circuit in the simulated van: it stands with a tank that has cooled, works begin, hoses off and
/// filled again, a trial run while air burps through, works end on the road, and the drive goes on. Every scan goes
/// through the monitor as in `run`.
/// </summary>
internal sealed class WorksOnTheRoad
{
    /// <summary>When works begin and end, and since when the engine runs, seconds from the start.</summary>
    public const double BeginsAtS = 1200, RunsFromS = 3000, EndsAtS = 4500;

    private readonly SimulatedVan _van;
    private readonly Monitor _monitor;

    public WorksOnTheRoad(int seed, FittedSet fitted, params ReadOnlySpan<Happening> more)
    {
        var plan = new DrivePlan
        {
            TankBottomCelsius = 14,
            TankTopCelsius = 16,
            EngineCelsius = 30,
            Legs = [new(LegKind.Parked, RunsFromS / 60), new(LegKind.Country, 90)],
            Actions = [new(BeginsAtS, Of(ActionKind.WorksBegin)), new(EndsAtS, Of(ActionKind.WorksEnd))],
        };
        plan = plan.With(new Happening(1500, HappeningKind.HosesTakenOff, 1200, 1.5)).With([.. Burps()]).With(more);
        _van = new SimulatedVan(VanTraits.Random(seed).With(fitted), plan, seed);
        _monitor = new Monitor(new VanDescription { Fitted = fitted }, KeptState.Fresh, ForecastTiming.WhenAsked);
    }

    /// <summary>Every change as seconds and <c>+alarm/subject</c> or <c>-alarm</c>.</summary>
    public List<(double AtS, string Change)> Changes { get; } = [];

    /// <summary>Bleeding as it was shown, each step once when it came.</summary>
    public List<(double AtS, BleedingStep Step)> Steps { get; } = [];

    public Picture? Last { get; private set; }

    public SimulatedVan Van => _van;

    public Monitor Monitor => _monitor;

    public KeptState Kept => _monitor.Keep();

    /// <summary>Goes on until a moment of the plan.</summary>
    public WorksOnTheRoad Until(double untilS)
    {
        while (_van.Scan.Elapsed.TotalSeconds < untilS && _van.Step())
        {
            Last = _monitor.Observe(_van.Scan);
            foreach (var change in Last.Changes)
            {
                Changes.Add((Last.Elapsed.TotalSeconds, (change.IsRaised ? "+" : "-") + change.Definition.Name));
            }

            if (Last.IsInWorks && (Steps.Count == 0 || Steps[^1].Step != Last.Works.Bleeding))
            {
                Steps.Add((Last.Elapsed.TotalSeconds, Last.Works.Bleeding));
            }
        }

        return this;
    }

    private static PersonAction Of(ActionKind kind) => new(kind, "", "");

    /// <summary>
    /// Slugs of air stop the flow for some seconds, and ever more seldom, in the first ten minutes of the trial run.
    /// </summary>
    private static IEnumerable<Happening> Burps()
    {
        double[] atS = [90, 140, 190, 240, 290, 340, 390, 440, 500, 580];
        foreach (var s in atS)
        {
            yield return new Happening(RunsFromS + s, HappeningKind.AirLock, 24, 0.02);
        }
    }
}
