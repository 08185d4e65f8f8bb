namespace OnboardHeat.Simulation;

/// <summary>Plans ready to follow.</summary>
public static class DrivePlans
{
    /// <summary>
    /// When the hose comes off in <see cref="MountainDay"/>: well up the second climb, seconds from the start.
    /// </summary>
    public const double MountainHoseOffAtS = (3 * 3600) + 250;

    /// <summary>
    /// Two people tour the passes in late spring: breakfast things washed with cool water, down the valley, through a
    /// town, over a first pass, a walk at the top with the engine off, a shower by the lake, and up the second pass,
    /// where the flow hose comes off.
    /// </summary>
    public static DrivePlan MountainDay(bool hoseComesOff = true)
    {
        var plan = new DrivePlan
        {
            Start = new DateTimeOffset(2026, 5, 23, 8, 40, 0, TimeSpan.FromHours(2)),
            OutsideCelsius = 11,
            DaySwingK = 6,
            AltitudeM = 620,
            TankBottomCelsius = 17,
            TankTopCelsius = 24,
            ShelterCelsius = 15,
            Legs =
            [
                new(LegKind.Parked, 4), new(LegKind.Idle, 2), new(LegKind.Country, 14), new(LegKind.Town, 9),
                new(LegKind.Country, 11),
                new(LegKind.Climb, 24, 7), new(LegKind.Parked, 35), new(LegKind.Descent, 20, -7), new(LegKind.Town, 6),
                new(LegKind.Country, 12), new(LegKind.Parked, 28), new(LegKind.Country, 8), new(LegKind.Climb, 26, 7.5),
            ],
            Happenings =
            [
                new(20, HappeningKind.DoorsOpen, 90),
                new(400, HappeningKind.CabHeater, 900, 0.6),
                new(5100, HappeningKind.DoorsOpen, 60),
                new(8350, HappeningKind.Draw, 210, 6),
                new(8300, HappeningKind.DoorsOpen, 120),
            ],
        };
        plan = plan.With();
        return hoseComesOff ? plan.With(new Happening(MountainHoseOffAtS, HappeningKind.TankFlowHoseOff)) : plan;
    }

    /// <summary>
    /// A drive of about one to two and a half hours over mixed roads, in any weather, with the small things of daily
    /// life.
    /// </summary>
    public static DrivePlan Mixed(int seed) => PlanMaker.Drive(new Chance((ulong)seed, 21));

    /// <summary>Parked for 30 to 72 hours with a warm tank.</summary>
    public static DrivePlan Night(int seed) => PlanMaker.Night(new Chance((ulong)seed, 22));
}
