using OnboardHeat.Core.Journeys;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Journeys;

/// <summary>Nights of the simulated van, whose loss coefficient is known, through Monitor and comparison.</summary>
public sealed class SimulatedNightTests
{
    private const double BeforeWPerK = 0.8, AfterWPerK = 0.62;

    [Theory]
    [InlineData(0, null)]
    [InlineData(60, NightReason.Draw)]
    [InlineData(240, NightReason.Draw)]
    public void NightAfterADraw_IsLeftOut(double drawS, NightReason? expected)
    {
        var happenings = drawS > 0 ? [new Happening(3600, HappeningKind.Draw, drawS, 6)] : Array.Empty<Happening>();
        var night = Spells(Traits(BeforeWPerK), Night(68, 14, 11).With(happenings), 4)[^1];
        Assert.Equal(expected, InsulationComparison.ReasonAgainst(night));
    }

    [Fact]
    public void OpenValves_AreTheReason()
    {
        var traits = Traits(BeforeWPerK).With(Kits.Everything);
        var night = Spells(traits, Night(68, 14, 8) with { Happenings = [] }, 4)[^1];
        Assert.Equal(NightReason.ValvesOpen, InsulationComparison.ReasonAgainst(night));
    }

    [Fact]
    public void ValvesOpenedBeforeTheEnd_DoNotSpoilTheNight()
    {
        // GIVEN valves that are closed for nine hours and open for the last one, when coolant turns by itself.
        var plan = Night(68, 14, 10) with { Happenings = [new Happening(0, HappeningKind.ValvesClosed, 9 * 3600)] };

        // THEN the closed stretch alone tells the loss: that of the traits, within what two probes can see.
        var night = Spells(Traits(BeforeWPerK).With(Kits.Everything), plan, 4)[^1];
        Assert.Null(InsulationComparison.ReasonAgainst(night));
        Assert.InRange(night.LossWPerK!.Value.Value, BeforeWPerK * 0.94, BeforeWPerK * 1.06);
    }

    [Fact]
    public void LaggingChangedHalfWay_IsAnsweredWithTheTrueDifferenceInItsInterval()
    {
        // GIVEN four nights before and three after in different weather, from different starts, and one that is too
        // short.
        var before = Nights(BeforeWPerK, (72, 14, 9.5), (64, 9, 8), (69, 17, 10), (60, 12, 9), (66, 12, 4)).ToList();
        var after = Nights(AfterWPerK, (66, 7, 9), (71, 11, 10), (62, 15, 8.5)).ToList();

        // WHEN they are compared
        var answer = InsulationComparison.Of(before, after);

        // THEN it is better, by what the traits say, and the short one is named.
        Assert.Equal(InsulationVerdict.Better, answer.Verdict);
        Assert.Equal((4, 3), (answer.Before.Count, answer.After.Count));
        Assert.Equal(NightReason.TooShort, Assert.Single(answer.LeftOut).Why);
        Assert.InRange(AfterWPerK - BeforeWPerK, answer.LowWPerK!.Value, answer.HighWPerK!.Value);
        Assert.InRange(answer.HighWPerK.Value - answer.LowWPerK.Value, 0.001, 0.12);
    }

    [Fact]
    public void NothingChanged_IsNotToldAsBetterOrWorse()
    {
        var answer = InsulationComparison.Of(
            Nights(BeforeWPerK, (72, 14, 9.5), (64, 9, 8), (69, 17, 10)),
            Nights(BeforeWPerK, (66, 7, 9), (71, 11, 10), (62, 15, 8.5)));
        Assert.Equal(InsulationVerdict.NoDifferenceSeen, answer.Verdict);
    }

    private static IEnumerable<Journey> Nights(double lossWPerK,
        params (double Tank, double Outside, double Hours)[] nights) =>
        nights.SelectMany((night, i) =>
            Spells(Traits(lossWPerK), Night(night.Tank, night.Outside, night.Hours), 40 + i));

    private static VanTraits Traits(double lossWPerK)
    {
        var traits = new VanTraits();
        return traits with
        {
            Tank = traits.Tank with { LossWPerK = lossWPerK, LossRiseShare = 0 },
                Shelter = traits.Shelter with { NearTankShare = 0 },
        };
    }

    private static DrivePlan Night(double tankCelsius, double outsideCelsius, double hours) => new DrivePlan
    {
        Start = new DateTimeOffset(2026, 5, 23, 21, 30, 0, TimeSpan.FromHours(2)),
        Legs = [new(LegKind.Parked, hours * 60)],
        OutsideCelsius = outsideCelsius,
        TankBottomCelsius = tankCelsius,
        TankTopCelsius = tankCelsius,
        ScanPeriodS = 30,
    }.With(new Happening(0, HappeningKind.ValvesClosed, 1e9));

    private static List<Journey> Spells(VanTraits traits, DrivePlan plan, int seed)
    {
        var van = new SimulatedVan(traits, plan, seed);
        var monitor = new Core.Monitor(
            new VanDescription { Fitted = traits.Fitted, Tank = new() { VesselMassKg = traits.Tank.SteelKg } },
            KeptState.Fresh,
            ForecastTiming.WhenAsked);
        List<Journey> journeys = [];
        while (van.Step())
        {
            journeys.AddRange(monitor.Observe(van.Scan).Journeys);
        }

        return [.. journeys.Concat(monitor.EndJourneys()).Where(journey => journey.Type == JourneyType.Standing)];
    }
}
