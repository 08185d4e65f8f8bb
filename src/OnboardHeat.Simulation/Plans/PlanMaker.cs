namespace OnboardHeat.Simulation;

/// <summary>Makes drives and nights by chance.</summary>
internal static class PlanMaker
{
    private static readonly double[] s_periodsS = [1, 2, 2, 2, 3, 4, 5];

    public static DrivePlan Drive(Chance chance)
    {
        var outside = chance.Between(-4, 27);
        var isWarmStart = chance.Happens(0.3);
        var tank = TankAtStart(chance, outside);
        List<Leg> legs = chance.Happens(0.3) ? [new(LegKind.Parked, chance.Between(1, 6))] : [];
        legs.Add(new Leg(LegKind.Idle, chance.Between(0.1, 4)));
        Roads(chance, legs, chance.Between(50, 140));
        if (chance.Happens(0.5))
        {
            legs.Add(new Leg(LegKind.Parked, chance.Between(5, 25)));
        }

        var plan = new DrivePlan
        {
            Start = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(
                chance.Whole(0, (365 * 1440) - 1)),
            Legs = legs,
            ScanPeriodS = s_periodsS[chance.Whole(0, s_periodsS.Length - 1)],
            OutsideCelsius = outside,
            DaySwingK = chance.Between(2, 8),
            AltitudeM = chance.Between(50, 1200),
            TankBottomCelsius = tank.Bottom,
            TankTopCelsius = tank.Top,
            BoundaryShare = chance.Between(0.2, 0.8),
            EngineCelsius = isWarmStart ? chance.Between(outside, 85) : null,
            ShelterCelsius = outside + chance.Between(0, 14),
        };
        return plan with { Happenings = DailyLife(chance, plan.LengthS) };
    }

    public static DrivePlan Night(Chance chance)
    {
        var outside = chance.Between(-4, 25);
        var top = chance.Between(45, 80);
        var isLayered = chance.Happens(0.3);
        List<Happening> life = [];
        var hours = chance.Between(30, 72);
        if (chance.Happens(0.5))
        {
            var kept = chance.Between(14, 21);
            for (var evening = chance.Between(0, 6); evening < hours; evening += 24)
            {
                life.Add(new Happening(evening * 3600, HappeningKind.SpaceHeating, chance.Between(2, 5) * 3600, kept));
            }
        }

        for (var at = chance.Between(0.5, 6) * 3600; at < hours * 3600; at += chance.Between(1, 9) * 3600)
        {
            life.Add(new Happening(at, HappeningKind.DoorsOpen, chance.Between(20, 400)));
        }

        var plan = new DrivePlan
        {
            Start = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(
                chance.Whole(0, (365 * 1440) - 1)),
            Legs = [new(LegKind.Parked, hours * 60)],
            ScanPeriodS = chance.Happens(0.5) ? 10 : 20,
            OutsideCelsius = outside,
            DaySwingK = chance.Between(2, 9),
            AltitudeM = chance.Between(50, 1600),
            TankTopCelsius = top,
            TankBottomCelsius = isLayered ? chance.Between(15, top) : top - chance.Between(0, 3),
            BoundaryShare = chance.Between(0.2, 0.7),
            EngineCelsius = outside + chance.Between(0, 40),
            ShelterCelsius = outside + chance.Between(1, 10),
        };
        return plan.With([.. life]);
    }

    /// <summary>Roads until the minutes are driven: no two vans meet the same.</summary>
    private static void Roads(Chance chance, List<Leg> legs, double minutes)
    {
        var height = 0.0;
        while (minutes > 0)
        {
            var length = Math.Min(minutes, chance.Between(3, 28));
            var pick = chance.Share();
            if (pick < 0.2)
            {
                legs.Add(new Leg(LegKind.Town, length));
            }
            else if (pick < 0.48)
            {
                legs.Add(new Leg(LegKind.Country, length));
            }
            else if (pick < 0.63)
            {
                legs.Add(new Leg(LegKind.Motorway, length));
            }
            else if (pick < 0.86)
            {
                // What goes up comes down again.
                var isUp = height < 600 && (height < 200 || chance.Happens(0.5));
                var grade = (isUp ? 1 : -1) * chance.Between(3, 9);
                height += grade / 100 * length * 750;
                legs.Add(new Leg(isUp ? LegKind.Climb : LegKind.Descent, length, grade));
            }
            else if (pick < 0.93)
            {
                length = chance.Between(1, 9);
                legs.Add(new Leg(LegKind.Idle, length));
            }
            else
            {
                length = chance.Between(3, 12);
                legs.Add(new Leg(LegKind.Parked, length));
            }

            minutes -= length;
        }
    }

    private static (double Bottom, double Top) TankAtStart(Chance chance, double outside)
    {
        var cold = Math.Max(3, outside + chance.Between(-2, 8));
        var pick = chance.Share();
        if (pick < 0.45)
        {
            return (cold, cold);
        }

        var top = chance.Between(cold, 70);
        return pick < 0.75 ? (top, top) : (chance.Between(Math.Min(cold, 12), top), top);
    }

    private static List<Happening> DailyLife(Chance chance, double lengthS)
    {
        List<Happening> life = [];
        for (var at = chance.Between(0, 3000); at < lengthS; at += chance.Between(600, 5000))
        {
            life.Add(chance.Happens(0.55)
                ? new Happening(at, HappeningKind.CabHeater, chance.Between(200, 2400), chance.Between(0.2, 1))
                : new Happening(at, HappeningKind.DoorsOpen, chance.Between(10, 120)));
        }

        return life;
    }
}
