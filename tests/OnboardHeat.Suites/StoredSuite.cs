using OnboardHeat.Core;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>
/// Stored energy and minutes of shower against the truth: every five minutes of drives, every half hour of nights.
/// </summary>
internal static class StoredSuite
{
    public static int Run(Request request)
    {
        foreach (var kit in request.Kits)
        {
            ReadOnlySpan<ScenarioKind> kinds =
                [ScenarioKind.Ordinary, ScenarioKind.ShowerOnTheMove, ScenarioKind.Night, ScenarioKind.NightWithDraws];
            foreach (var kind in kinds)
            {
                Print(kit, kind, request);
            }
        }

        return 0;
    }

    private static void Print(Kit kit, ScenarioKind kind, Request request)
    {
        var compared = new List<Comparison>[(int)request.Amount];
        Parallel.For(0, compared.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 },
            i => compared[i] = Compare(Scenarios.Make(kind, request.Seed + i), kit, request));
        var all = compared.SelectMany(c => c).ToList();
        var told = all.Where(c => c.IsTold).ToList();
        var energy = told.Select(c => Math.Abs((c.StoredKWh / c.TrueKWh) - 1)).ToList();
        var minutes = told.Select(c => Math.Abs(c.Minutes - c.TrueMinutes)).ToList();
        var inside = told.Count(c => c.TrueMinutes >= c.Low - 1e-9 && c.TrueMinutes <= c.High + 1e-9);
        Console.WriteLine($"kit {kit.Name}, {kind}, {compared.Length} from seed {request.Seed}: energy error median "
            + $"{Figures.Percent(Figures.Quantile(energy, 0.5))}, p90 "
            + $"{Figures.Percent(Figures.Quantile(energy, 0.9))}; minutes error median "
            + $"{Figures.Quantile(minutes, 0.5):0.00}, p90 {Figures.Quantile(minutes, 0.9):0.00}; inside the range "
            + $"{Figures.Percent(inside, told.Count)}, "
            + $"mean width {(told.Count > 0 ? told.Average(c => c.High - c.Low) : double.NaN):0.00} min; answered "
            + $"{Figures.Percent(told.Count, all.Count)} of {all.Count}");
    }

    private static List<Comparison> Compare(Scenario scenario, Kit kit, Request request)
    {
        var kept = request.IsKnown ? Acquaintance.Make(scenario.Traits, scenario.Seed, [kit])[0] : KeptState.Fresh;
        var watcher = new Watcher(kit, scenario.Traits, kept);
        var van = scenario.Start();
        var everyS = scenario.Kind >= ScenarioKind.Night ? 1800 : 300;
        var next = (double)everyS;
        var shower = kit.Describe(scenario.Traits).Shower;
        List<Comparison> compared = [];
        while (van.Step())
        {
            watcher.Observe(van.Scan);
            if (van.Truth.ElapsedS < next)
            {
                continue;
            }

            next += everyS;
            var trueKWh = van.Truth.StoredJ / 3.6e6;
            if (trueKWh >= 0.15)
            {
                compared.Add(Comparison.Of(
                    watcher.Monitor.Forecast(), trueKWh,
                    van.TrueShowerMinutes(shower.MixedCelsius, shower.FlowLitresPerMinute)));
            }
        }

        return compared;
    }
}
