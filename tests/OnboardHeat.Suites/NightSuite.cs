using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>Nights with valves left open, with valves closed, and on the electric element.</summary>
internal static class NightSuite
{
    /// <summary>Heat leaving through the coil, a ten-minute mean, above which the circuit really drains the tank; watts.</summary>
    private const double DrainsW = 25;

    public static int Run(Request request)
    {
        var nights = (int)request.Amount;
        Console.WriteLine($"seed {request.Seed}, {nights} nights of each sort, kit {request.Kits[0].Name}");
        PrintValves(Collect(ScenarioKind.NightValvesOpen, request), isOpen: true);
        PrintValves(Collect(ScenarioKind.Night, request), isOpen: false);
        PrintStored(Collect(ScenarioKind.NightWithElement, request));
        return 0;
    }

    private static List<NightResult> Collect(ScenarioKind kind, Request request)
    {
        var results = new NightResult[(int)request.Amount];
        Parallel.For(0, results.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 },
            i => results[i] = Stand(Scenarios.Make(kind, request.Seed + i), request.Kits[0]));
        return [.. results];
    }

    private static NightResult Stand(Scenario scenario, Kit kit)
    {
        var watcher = new Watcher(kit, scenario.Traits, KeptState.Fresh);
        var van = scenario.Start();
        var result = new NightResult { Seed = scenario.Seed, TrueLossWPerK = scenario.Traits.Tank.LossWPerK };
        double meanW = 0, next = 1800;
        while (van.Step())
        {
            var truth = van.Truth;
            watcher.Observe(van.Scan);
            meanW += (-truth.CoilW - meanW) * van.Plan.ScanPeriodS / 600;
            if (meanW > DrainsW && truth.ElapsedS > 600)
            {
                result.DrainsFromS ??= truth.ElapsedS;
            }

            if (truth.ElapsedS < next)
            {
                continue;
            }

            next += 1800;
            var forecast = watcher.Monitor.Forecast();
            if (truth.StoredJ > 0.15 * 3.6e6 && forecast.StoredEnergyKWh is { } kWh)
            {
                result.StoredErrors.Add(Math.Abs((kWh * 3.6e6 / truth.StoredJ) - 1));
            }

            result.LossWPerK = forecast.LossCoefficientWPerK ?? result.LossWPerK;
        }

        foreach (var said in watcher.Said)
        {
            if (said is { IsRaised: true, Kind: AlarmKind.CloseValves })
            {
                result.ToldAtS ??= said.AtS;
            }
        }

        return result;
    }

    private static void PrintValves(List<NightResult> nights, bool isOpen)
    {
        if (!isOpen)
        {
            Console.WriteLine($"valves closed: close-valves said on {nights.Count(n => n.ToldAtS is not null)} of {nights.Count} nights");
            PrintStored(nights);
            return;
        }

        var drained = nights.Where(n => n.DrainsFromS is not null).ToList();
        var delays = drained.Select(n => n.ToldAtS is { } told ? Math.Max(0, told - n.DrainsFromS!.Value) : double.PositiveInfinity).ToList();
        Console.WriteLine($"valves open: {drained.Count} of {nights.Count} nights drain the tank; close-valves within 60 min on "
            + $"{Figures.Percent(delays.Count(d => d <= 3600), delays.Count)}, median {Figures.Seconds(Figures.Quantile(delays, 0.5))}, "
            + $"p90 {Figures.Seconds(Figures.Quantile(delays, 0.9))}");
        PrintStored(nights);
    }

    private static void PrintStored(List<NightResult> nights)
    {
        var errors = nights.SelectMany(n => n.StoredErrors).ToList();
        var losses = nights.Where(n => n.LossWPerK is not null).Select(n => Math.Abs((n.LossWPerK!.Value / n.TrueLossWPerK) - 1)).ToList();
        var bias = nights.Where(n => n.LossWPerK is not null).Select(n => (n.LossWPerK!.Value / n.TrueLossWPerK) - 1).ToList();
        Console.WriteLine($"  stored energy error median {Figures.Percent(Figures.Quantile(errors, 0.5))}, p90 {Figures.Percent(Figures.Quantile(errors, 0.9))} "
            + $"({errors.Count} figures); loss coefficient at the end, error median {Figures.Percent(Figures.Quantile(losses, 0.5))}, "
            + $"p90 {Figures.Percent(Figures.Quantile(losses, 0.9))}, bias {Figures.Percent(Figures.Quantile(bias, 0.5))} ({losses.Count} nights)");
    }
}
