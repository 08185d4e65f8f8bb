namespace OnboardHeat.Simulation;

/// <summary>A drive or a night: where from, over which roads, in what weather, and what happens.</summary>
public sealed record DrivePlan
{
    /// <summary>Wall clock at the start.</summary>
    public DateTimeOffset Start { get; init; } = new(2026, 5, 23, 8, 40, 0, TimeSpan.FromHours(2));

    /// <summary>Stretches, one after the other.</summary>
    public IReadOnlyList<Leg> Legs { get; init; } = [];

    /// <summary>What happens, by time.</summary>
    public IReadOnlyList<Happening> Happenings { get; init; } = [];

    /// <summary>What people tell the daemon, by time.</summary>
    public IReadOnlyList<PlannedAction> Actions { get; init; } = [];

    /// <summary>Time between scans, seconds.</summary>
    public double ScanPeriodS { get; init; } = 2;

    /// <summary>Mean of the day in the open, degrees Celsius, at the altitude of the start.</summary>
    public double OutsideCelsius { get; init; } = 14;

    /// <summary>Half of the difference between afternoon and early morning, kelvin.</summary>
    public double DaySwingK { get; init; } = 5;

    /// <summary>Altitude at the start, metres.</summary>
    public double AltitudeM { get; init; } = 400;

    /// <summary>Water at the bottom of the tank at the start, degrees Celsius.</summary>
    public double TankBottomCelsius { get; init; } = 15;

    /// <summary>Water at its top, degrees Celsius.</summary>
    public double TankTopCelsius { get; init; } = 15;

    /// <summary>Where the boundary between the two lies, a share of the height.</summary>
    public double BoundaryShare { get; init; } = 0.5;

    /// <summary>Engine at the start, degrees Celsius; null: as the open air.</summary>
    public double? EngineCelsius { get; init; }

    /// <summary>Space around the tank at the start, degrees Celsius; null: 3 K above the open air.</summary>
    public double? ShelterCelsius { get; init; }

    /// <summary>Length of the whole plan, seconds.</summary>
    public double LengthS
    {
        get
        {
            double sum = 0;
            foreach (var leg in Legs)
            {
                sum += leg.Minutes * 60;
            }

            return sum;
        }
    }

    /// <summary>The same plan with more happenings.</summary>
    public DrivePlan With(params ReadOnlySpan<Happening> more)
    {
        List<Happening> all = [.. Happenings, .. more];
        all.Sort((a, b) => a.AtS.CompareTo(b.AtS));
        return this with { Happenings = all };
    }
}
