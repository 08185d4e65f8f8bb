using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>Nights with valves left open, with valves closed, and on the electric element.</summary>
internal static class NightSuite
{
    /// <summary>
    /// Heat leaving through the coil, a ten-minute mean, above which the circuit really drains the tank; watts.
    /// </summary>
    private const double DrainsW = 25;

    /// <summary>
    /// What the issue asks: told within this, on this share of the nights that drain; energy with the element.
    /// </summary>
    private const double ToldWithinS = 3600, ToldShare = 0.9, ElementP90 = 0.05;

    /// <summary>A spell that taught a loss so many times the true one has taken something else for it.</summary>
    private const double WrongLossRatio = 1.3;

    /// <summary>Runs the three sorts of nights; not zero when one misses what it has to reach.</summary>
    public static int Run(Request request)
    {
        var nights = (int)request.Amount;
        var kit = request.Kits[0];
        Console.WriteLine($"seed {request.Seed}, {nights} nights of each sort, kit {kit.Name}");
        var isWell = PrintValves(Collect(ScenarioKind.NightValvesOpen, request, kit), isOpen: true);
        isWell &= PrintValves(Collect(ScenarioKind.Night, request, kit), isOpen: false);
        var element = new Kit("full with element", Kits.FullWithElement);
        Console.WriteLine($"element, kit {element.Name}");
        isWell &= PrintStored(Collect(ScenarioKind.NightWithElement, request, element)) <= ElementP90;
        Console.WriteLine(isWell ? "reached" : "NOT REACHED");
        return isWell || nights < 50 ? 0 : 1;
    }

    private static List<NightResult> Collect(ScenarioKind kind, Request request, Kit kit)
    {
        var results = new NightResult[(int)request.Amount];
        Parallel.For(0, results.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 },
            i => results[i] = Stand(Scenarios.Make(kind, request.Seed + i).With(kit.Fitted), kit));
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

        result.LearntWPerK = watcher.Monitor.Keep().Learnt.Tank.LossWPerK?.Value;
        foreach (var said in watcher.Said)
        {
            if (said is { IsRaised: true, Kind: AlarmKind.CloseValves })
            {
                result.ToldAtS ??= said.AtS;
            }
        }

        return result;
    }

    private static bool PrintValves(List<NightResult> nights, bool isOpen)
    {
        if (!isOpen)
        {
            var falsely = nights.Count(n => n.ToldAtS is not null);
            Console.WriteLine($"valves closed: close-valves said on {falsely} of {nights.Count} nights");
            PrintStored(nights);
            return falsely == 0;
        }

        var drained = nights.Where(n => n.DrainsFromS is not null).ToList();
        var delays = drained
            .Select(n => n.ToldAtS is { } told ? Math.Max(0, told - n.DrainsFromS!.Value) : double.PositiveInfinity)
            .ToList();
        var within = delays.Count(d => d <= ToldWithinS);
        var taught = drained.Count(n => n.LearntWPerK > WrongLossRatio * n.TrueLossWPerK);
        Console.WriteLine($"valves open: {drained.Count} of {nights.Count} nights drain the tank; close-valves within "
            + $"60 min on {Figures.Percent(within, delays.Count)}, median "
            + $"{Figures.Seconds(Figures.Quantile(delays, 0.5))}, "
            + $"p90 {Figures.Seconds(Figures.Quantile(delays, 0.9))}; taught a wrong loss on {taught}; never told: "
            + string.Join(' ', drained.Where(n => n.ToldAtS is null).Select(n => n.Seed)));
        PrintStored(nights);
        return within >= ToldShare * delays.Count && taught == 0;
    }

    private static double PrintStored(List<NightResult> nights)
    {
        var errors = nights.SelectMany(n => n.StoredErrors).ToList();
        var ratios = nights.Where(n => n.LossWPerK is not null)
            .Select(n => n.LossWPerK!.Value / n.TrueLossWPerK).ToList();
        var losses = ratios.Select(r => Math.Abs(r - 1)).ToList();
        var learnt = nights.Count(n => n.LearntWPerK is not null);
        var wrong = nights.Count(n => n.LearntWPerK > WrongLossRatio * n.TrueLossWPerK);
        var p90 = Figures.Quantile(errors, 0.9);
        Console.WriteLine($"  stored energy error median {Figures.Percent(Figures.Quantile(errors, 0.5))}, p90 "
            + $"{Figures.Percent(p90)} ({errors.Count} figures); loss coefficient at the end, error median "
            + $"{Figures.Percent(Figures.Quantile(losses, 0.5))}, p90 "
            + $"{Figures.Percent(Figures.Quantile(losses, 0.9))}, bias "
            + $"{Figures.Percent(Figures.Quantile(ratios, 0.5) - 1)}; learnt on {learnt} nights, over "
            + $"{WrongLossRatio} times the true one on {wrong}");
        return p90;
    }
}
