using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>
/// First drives with a hose rated 70 °C on the flow: how long before it is that hot the advice comes.
/// </summary>
internal static class RatingSuite
{
    private const double RatedCelsius = 70;

    public static int Run(Request request)
    {
        foreach (var kit in request.Kits.Where(k => k.Fitted.Has(Channel.Flow)))
        {
            var leads = new double?[(int)request.Amount];
            Parallel.For(0, leads.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => leads[i] = Lead(
                request.Seed + i, kit));
            var crossed = leads.Where(l => l is not null).Select(l => l!.Value).ToList();
            Console.WriteLine($"kit {kit.Name}, seed {request.Seed}: {crossed.Count} of {leads.Length} first drives "
                + $"pass {RatedCelsius:0} °C; advice leads by median "
                + $"{Figures.Seconds(Figures.Quantile(crossed, 0.5))}, p10 "
                + $"{Figures.Seconds(Figures.Quantile(crossed, 0.1))}; "
                + $"{crossed.Count(l => l <= 0)} without warning before");
        }

        return 0;
    }

    private static double? Lead(int seed, Kit kit)
    {
        var scenario = Scenarios.Make(ScenarioKind.Ordinary, seed);
        if (scenario.Plan.EngineCelsius is not null)
        {
            // A first drive begins with a cold engine.
            scenario = scenario with { Plan = scenario.Plan with { EngineCelsius = null } };
        }

        var watcher = new Watcher(
            kit, scenario.Traits, KeptState.Fresh, [new CircuitPart("hose", "hose", Channel.Flow, RatedCelsius)]);
        var van = scenario.Start();
        double? crossedAtS = null;
        while (van.Step() && crossedAtS is null)
        {
            watcher.Observe(van.Scan);
            crossedAtS = van.Scan[Channel.Flow] is { HasValue: true } flow
                && flow.Value >= RatedCelsius && flow.Value < 85 ? van.Truth.ElapsedS : null;
        }

        foreach (var said in watcher.Said)
        {
            if (said is { IsRaised: true, Kind: AlarmKind.RatingNear } && crossedAtS is { } at)
            {
                return at - said.AtS;
            }
        }

        return crossedAtS is null ? null : 0;
    }
}
