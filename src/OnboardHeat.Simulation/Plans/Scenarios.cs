using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>Drives and nights of every kind, each wholly from its seed.</summary>
internal static class Scenarios
{
    /// <summary>Kinds in which coolant leaves the circuit fast enough to matter within minutes.</summary>
    public static IReadOnlyList<ScenarioKind> Failures { get; } =
        [ScenarioKind.TankFlowHose, ScenarioKind.TankReturnHose, ScenarioKind.EngineHose, ScenarioKind.SplitHose];

    /// <summary>Driving kinds in which no coolant is lost.</summary>
    public static IReadOnlyList<ScenarioKind> Innocent { get; } =
    [
        ScenarioKind.Ordinary, ScenarioKind.ValvesClosed, ScenarioKind.AirLock, ScenarioKind.PumpSlips,
        ScenarioKind.ThermostatStuck,
        ScenarioKind.ShowerOnTheMove, ScenarioKind.Ford, ScenarioKind.ColdTopUp, ScenarioKind.WaterInTray,
        ScenarioKind.ProbeOffPipe,
        ScenarioKind.Glitches, ScenarioKind.ProbesSwapped, ScenarioKind.SignalTrouble,
    ];

    /// <summary>Makes a scenario.</summary>
    public static Scenario Make(ScenarioKind kind, int seed)
    {
        var chance = new Chance((ulong)seed, 31 + (ulong)kind);
        var traits = VanTraits.Random(seed);
        if (kind >= ScenarioKind.Night)
        {
            return Night(kind, seed, traits, chance);
        }

        var plan = DrivePlans.Mixed(seed);
        if (kind == ScenarioKind.Ordinary)
        {
            return new Scenario(kind, seed, traits, plan, null);
        }

        var at = kind == ScenarioKind.ProbesSwapped ? 0 : DrivingMoment(plan, chance);
        return new Scenario(kind, seed, traits, plan.With([.. Events(kind, at, plan, chance)]), at);
    }

    /// <summary>
    /// A moment at which the engine runs: anywhere in the drive, one in ten within a minute of a start.
    /// </summary>
    private static double DrivingMoment(DrivePlan plan, Chance chance)
    {
        var isEarly = chance.Happens(0.1);
        var leftS = 0.0;
        foreach (var leg in plan.Legs)
        {
            leftS += leg.Kind == LegKind.Parked ? 0 : leg.Minutes * 60;
        }

        leftS *= isEarly ? 0 : chance.Between(0.05, 0.85);
        var atS = 0.0;
        foreach (var leg in plan.Legs)
        {
            var lengthS = leg.Minutes * 60;
            if (leg.Kind != LegKind.Parked)
            {
                if (leftS < lengthS)
                {
                    return Math.Floor(atS + leftS + (isEarly ? chance.Between(2, 60) : 0));
                }

                leftS -= lengthS;
            }

            atS += lengthS;
        }

        return Math.Floor(atS / 2);
    }

    private static List<Happening> Events(ScenarioKind kind, double at, DrivePlan plan, Chance chance)
    {
        var line = chance.Happens(0.5) ? Channel.Flow : Channel.Return;
        return kind switch
        {
            ScenarioKind.TankFlowHose => [new(at, HappeningKind.TankFlowHoseOff)],
            ScenarioKind.TankReturnHose => [new(at, HappeningKind.TankReturnHoseOff)],
            ScenarioKind.EngineHose =>
                [new(at, chance.Happens(0.6) ? HappeningKind.EngineFlowHoseOff : HappeningKind.EngineReturnHoseOff)],
            ScenarioKind.SplitHose => [new(at, HappeningKind.HoseSplit, Size: chance.Between(0.15, 0.6))],
            ScenarioKind.Weep => [new(at, HappeningKind.Weep, Size: chance.Between(0.03, 0.4))],
            ScenarioKind.ValvesClosed => [new(
                at, HappeningKind.ValvesClosed, chance.Happens(0.5) ? 1e9 : chance.Between(300, 2400))],
            ScenarioKind.AirLock => [new(
                at, HappeningKind.AirLock, chance.Between(120, 3600), chance.Between(0, 0.15))],
            ScenarioKind.PumpSlips => Slips(at, chance),
            ScenarioKind.ThermostatStuck => [new(at, HappeningKind.ThermostatStuck, Size: chance.Between(0.15, 1))],
            ScenarioKind.ShowerOnTheMove => [new(
                at, HappeningKind.Draw, chance.Between(60, 420), chance.Between(3, 8))],
            ScenarioKind.Ford => [new(at, HappeningKind.Ford, chance.Between(8, 60))],
            ScenarioKind.ColdTopUp => [new(at, HappeningKind.ColdTopUp, 1, chance.Between(0.4, 2))],
            ScenarioKind.WaterInTray => [new(at, HappeningKind.WaterInTray, 1, chance.Between(0.1, 1.5))],
            ScenarioKind.ProbeOffPipe => [new(at, HappeningKind.ProbeLoose, Size: chance.Between(0, 0.35), On: line)],
            ScenarioKind.ProbesSwapped =>
                [new(0, HappeningKind.ProbesSwapped, On: chance.Happens(0.5) ? Channel.TankTop : Channel.Flow)],
            ScenarioKind.SignalTrouble => chance.Happens(0.5)
                ? [new(at, HappeningKind.EngineSignalStuck, chance.Between(60, 3600), chance.Happens(0.5) ? 1 : 0)]
                : [new(at, HappeningKind.EngineSignalBounces, chance.Between(10, 600))],
            ScenarioKind.Glitches => Glitches(plan, chance),
            _ => [],
        };
    }

    private static List<Happening> Slips(double at, Chance chance)
    {
        List<Happening> slips = [];
        for (var i = chance.Whole(3, 15); i > 0; i--)
        {
            var length = chance.Between(4, 60);
            slips.Add(new Happening(at, HappeningKind.PumpSlips, length, chance.Between(0.1, 0.7)));
            at += length + chance.Between(5, 120);
        }

        return slips;
    }

    private static List<Happening> Glitches(DrivePlan plan, Chance chance)
    {
        List<Happening> glitches = [];
        for (var at = chance.Between(10, 400); at < plan.LengthS; at += chance.Between(60, 900))
        {
            var kind = (HappeningKind)chance.Whole((int)HappeningKind.ProbeMissing, (int)HappeningKind.ProbeJump);
            var length = kind == HappeningKind.ProbeStuck ? chance.Between(60, 900)
                : chance.Happens(0.8) ? plan.ScanPeriodS * chance.Whole(1, 3)
                : chance.Between(20, 300);
            var channel = (Channel)chance.Whole(0, (int)Channel.Tray);
            glitches.Add(new Happening(at, kind, length, chance.Between(-25, 25), channel));
        }

        return glitches;
    }

    private static Scenario Night(ScenarioKind kind, int seed, VanTraits traits, Chance chance)
    {
        var plan = DrivePlans.Night(seed);
        var hours = plan.LengthS / 3600;
        switch (kind)
        {
            case ScenarioKind.NightValvesOpen:
                // Only a van whose lines let the warm water drive itself has anything to tell.
                traits = traits with
                {
                    Engine = traits.Engine with { SelfFlowLitresPerMinuteK = chance.Between(0.001, 0.004) },
                };
                return new Scenario(kind, seed, traits, plan, 0);
            case ScenarioKind.NightWithElement:
                var at = chance.Between(1, hours / 2) * 3600;
                plan = plan.With(
                    new Happening(0, HappeningKind.ValvesClosed, 1e9),
                    new Happening(at, HappeningKind.Element, chance.Between(1, 8) * 3600));
                return new Scenario(kind, seed, traits, plan, at);
            case ScenarioKind.NightWithDraws:
                plan = plan.With(new Happening(0, HappeningKind.ValvesClosed, 1e9));
                for (var draw = chance.Between(1, 8); draw < hours; draw += chance.Between(3, 14))
                {
                    plan = plan.With(
                        new Happening(draw * 3600, HappeningKind.Draw, chance.Between(15, 300), chance.Between(2, 8)));
                }

                return new Scenario(kind, seed, traits, plan, null);
            default:
                return new Scenario(
                    kind, seed, traits, plan.With(new Happening(0, HappeningKind.ValvesClosed, 1e9)), null);
        }
    }
}
