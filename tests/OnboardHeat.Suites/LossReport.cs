using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>Prints what a kit told of losses, how late, and how often it cried wolf.</summary>
internal static class LossReport
{
    private const double InTimeS = 300, WeepInTimeS = 600;

    public static void Print(Kit kit, List<DriveResult> drives, bool isLoud)
    {
        var hours = drives.Sum(d => d.DrivingHours);
        var failures = drives.Where(d => Scenarios.Failures.Contains(d.Kind)).ToList();
        var delays = failures.Select(Delay).ToList();
        var rear = failures.Where(d => d.Kind is ScenarioKind.TankFlowHose or ScenarioKind.TankReturnHose)
            .Select(Delay).ToList();
        var weeps = drives.Where(d => d.Kind == ScenarioKind.Weep).Select(Delay).ToList();
        var falseLosses = drives.Sum(FalseLosses);
        var falseStops = drives.Sum(FalseStops);
        Console.WriteLine(
            $"kit {kit.Name}: {failures.Count} failures, "
                + $"{Figures.Percent(delays.Count(d => d <= InTimeS), delays.Count)} told within 300 s; "
            + $"delay median {Figures.Seconds(Figures.Quantile(delays, 0.5))}, p90 "
            + $"{Figures.Seconds(Figures.Quantile(delays, 0.9))}; "
            + $"rear hoses median {Figures.Seconds(Figures.Quantile(rear, 0.5))}; "
            + $"weeps within 600 s {Figures.Percent(weeps.Count(d => d <= WeepInTimeS), weeps.Count)}; "
            + $"false coolant-loss {falseLosses} = {1000 * falseLosses / hours:0.0}, "
            + $"false circulation-stopped {falseStops} = {1000 * falseStops / hours:0.0} in 1,000 h");
        if (kit.Muted is not null)
        {
            return;
        }

        foreach (var kind in drives.GroupBy(d => d.Kind).OrderBy(g => g.Key))
        {
            PrintKind(kind.Key, [.. kind], isLoud);
        }

        PrintLoad(drives);
    }

    private static void PrintKind(ScenarioKind kind, List<DriveResult> drives, bool isLoud)
    {
        var hours = drives.Sum(d => d.DrivingHours);
        var told = "";
        if (LossMix.StopsFlow(kind))
        {
            var delays = drives.Select(Delay).ToList();
            told = $"told within 300 s {delays.Count(d => d <= InTimeS)} of {delays.Count}, median "
                + $"{Figures.Seconds(Figures.Quantile(delays, 0.5))}; ";
        }

        Console.WriteLine($"  {kind}: {told}false coolant-loss {1000 * drives.Sum(FalseLosses) / hours:0.0}, "
            + $"circulation-stopped {1000 * drives.Sum(FalseStops) / hours:0.0} in 1,000 h ({hours:0} h)");
        if (isLoud)
        {
            foreach (var drive in drives.Where(
                d => FalseLosses(d) + FalseStops(d) > 0 || (Scenarios.Failures.Contains(kind) && Delay(d) > InTimeS)))
            {
                var said = string.Join(" ", drive.Said.Where(s => s.IsRaised).Select(
                    s => $"{s.AtS:0}:{s.Kind}{(s.Subject.Length > 0 ? "/" : "")}{s.Subject}"));
                Console.WriteLine($"    seed {drive.Seed} event {drive.EventAtS:0} {drive.Failure} said {said}");
            }
        }
    }

    private static void PrintLoad(List<DriveResult> drives)
    {
        var ordinary = drives.Where(d => d.Kind == ScenarioKind.Ordinary).ToList();
        var hours = ordinary.Sum(d => d.DrivingHours);
        var raised = ordinary.SelectMany(d => d.Said).Where(s => s.IsRaised).ToList();
        var priorities = raised.GroupBy(s => AlarmTable.Of(s.Kind).Priority).OrderByDescending(g => g.Key)
            .Select(g => $"{g.Key} {Figures.Percent(g.Count(), raised.Count)}");
        var kinds = raised.GroupBy(s => s.Kind).OrderByDescending(g => g.Count())
            .Select(g => $"{AlarmTable.Of(g.Key).Name} {g.Count() / hours:0.00}");
        Console.WriteLine($"  alarm load, ordinary driving: {raised.Count / hours:0.00} an hour "
            + $"({string.Join(", ", priorities)}); an hour: {string.Join(", ", kinds)}");
        Console.WriteLine($"  most changes of one alarm within a minute, any drive: {drives.Max(MostChangesAMinute)}");
    }

    /// <summary>From the event to the first word that tells it; endless when none came.</summary>
    private static double Delay(DriveResult drive)
    {
        foreach (var said in drive.Said)
        {
            if (said.IsRaised && said.AtS >= drive.EventAtS && Tells(drive.Kind, said.Kind))
            {
                return said.AtS - drive.EventAtS!.Value;
            }
        }

        return double.PositiveInfinity;
    }

    private static bool Tells(ScenarioKind kind, AlarmKind alarm) => kind switch
    {
        ScenarioKind.TankFlowHose or ScenarioKind.TankReturnHose => alarm == AlarmKind.CoolantLoss,
        ScenarioKind.EngineHose => alarm is AlarmKind.CoolantLoss or AlarmKind.CirculationStopped,
        _ => alarm is AlarmKind.CoolantLoss or AlarmKind.CirculationStopped
            or AlarmKind.CoolantWeep or AlarmKind.WeakHeating,
    };

    private static int FalseLosses(DriveResult drive) => drive.Said.Count(
        s => s.IsRaised && s.Kind == AlarmKind.CoolantLoss
            && (!LossMix.LosesCoolant(drive.Kind) || s.AtS < drive.EventAtS));

    private static int FalseStops(DriveResult drive) => drive.Said.Count(
        s => s.IsRaised && s.Kind == AlarmKind.CirculationStopped
            && (!LossMix.StopsFlow(drive.Kind) || s.AtS < drive.EventAtS));

    private static int MostChangesAMinute(DriveResult drive)
    {
        var most = 0;
        foreach (var alarm in drive.Said.GroupBy(s => (s.Kind, s.Subject)))
        {
            var times = alarm.Select(s => s.AtS).ToList();
            for (int i = 0, from = 0; i < times.Count; i++)
            {
                while (times[i] - times[from] >= 60)
                {
                    from++;
                }

                most = Math.Max(most, i - from + 1);
            }
        }

        return most;
    }
}
