using OnboardHeat.Core;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>Drives with and without failures through the monitor, with every kit beside each other.</summary>
internal static class LossSuite
{
    public static int Run(Request request)
    {
        var results = new List<DriveResult>();
        var hours = 0.0;
        var number = 0;
        while (hours < request.Amount)
        {
            // Batches, so that the hours asked for are met whatever length drives have; two threads, whole drives each.
            const int Batch = 28;
            var batch = new List<DriveResult>[Batch];
            var first = number;
            Parallel.For(0, Batch, new ParallelOptions { MaxDegreeOfParallelism = 2 },
                i => batch[i] = Drive(LossMix.KindOf(first + i), request.Seed + first + i, request));
            foreach (var drive in batch)
            {
                results.AddRange(drive);
                hours += drive[0].DrivingHours;
            }

            number += Batch;
        }

        Console.WriteLine($"seed {request.Seed}, {number} drives, {hours:0} driving hours, vans "
            + $"{(request.IsKnown ? "known" : "unknown")} before");
        foreach (var kit in request.Kits)
        {
            LossReport.Print(kit, [.. results.Where(r => r.Kit == kit)], request.IsLoud);
        }

        return 0;
    }

    private static List<DriveResult> Drive(ScenarioKind kind, int seed, Request request)
    {
        var scenario = Scenarios.Make(kind, seed);
        var kept = request.IsKnown ? Acquaintance.Make(scenario.Traits, seed, request.Kits) : null;
        var watchers =
            request.Kits.Select((kit, k) => new Watcher(kit, scenario.Traits, kept?[k] ?? KeptState.Fresh)).ToArray();
        var van = scenario.Start();
        var drivingS = 0.0;
        while (van.Step())
        {
            drivingS += van.Truth.IsEngineOn ? van.Plan.ScanPeriodS : 0;
            foreach (var watcher in watchers)
            {
                watcher.Observe(van.Scan);
            }
        }

        return
        [
            .. watchers.Select(w => new DriveResult(
                kind, seed, w.Kit, drivingS / 3600, van.Truth.ElapsedS, scenario.EventAtS, van.Truth.Failure?.Kind,
                w.Said)),
        ];
    }
}
