using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tank;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Journeys;

public sealed class JourneyFinderTests
{
    private static readonly VanTraits s_van = new();

    [Fact]
    public void MountainDay_FallsIntoTheStretchesThatWereDriven()
    {
        // GIVEN the plan: two minutes of idling from 8:44, a pass, 35 min at the top, a descent, 28 min by the lake
        // with a shower, a climb.
        var journeys = Journeys(s_van, DrivePlans.MountainDay(hoseComesOff: false));

        // THEN the first heating run is the way to the top, which ends at 66 min.
        var first = journeys.First(j => j.Type == JourneyType.Heating);
        Assert.InRange(first.FromS, 300, 600);
        Assert.InRange(first.ToS, 3700, 3960);
        Assert.InRange(first.StartCelsius, 18, 24);
        Assert.InRange(first.PeakCelsius, 60, 72);
        Assert.InRange(first.MeanWatts, 900, 1900);

        // AND the shower with the engine off is no part of the run before it.
        Assert.All(journeys.Where(j => j.Type == JourneyType.Heating), j => Assert.True(j.GainedKWh > 0, $"{j}"));

        // AND the rest at the top is a standing spell of 35 min, that by the lake is broken by the shower.
        var standing = journeys.First(j => j.Type == JourneyType.Standing);
        Assert.InRange(standing.ToS - standing.FromS, 2000, 2160);
        var draw = Assert.Single(journeys, j => j.Type == JourneyType.Draw);
        Assert.InRange(draw.FromS, 8320, 8420);
        Assert.InRange(draw.ToS, 8540, 8760);
    }

    [Fact]
    public void Draw_TellsTheHeatThatWasDrawn()
    {
        var plan = Parked(4, 65).With(new Happening(7200, HappeningKind.Draw, 240, 6));
        var van = new SimulatedVan(s_van, plan, 1);
        double before = 0, after = 0;
        while (van.Step())
        {
            before = van.Truth.ElapsedS <= 7190 ? van.Truth.StoredJ : before;
            after = van.Truth.ElapsedS <= 7500 ? van.Truth.StoredJ : after;
        }

        var draw = Assert.Single(Journeys(s_van, plan), j => j.Type == JourneyType.Draw);

        // Two probes see the boundary between warm and cold only as it passes them: a third is allowed.
        var trueKWh = (after - before) / 3.6e6;
        Assert.InRange(draw.GainedKWh / trueKWh, 0.65, 1.35);
    }

    [Fact]
    public void ShortRest_IsAStopAndAtLightsNothing()
    {
        var plan = Warm([
            new(LegKind.Country, 20), new(LegKind.Parked, 8), new(LegKind.Country, 20), new(LegKind.Parked, 0.5),
            new(LegKind.Country, 10)]);
        var stop = Assert.Single(Journeys(s_van, plan), j => j.Type == JourneyType.Stop);
        Assert.InRange(stop.FromS, 1195, 1215);
        Assert.InRange(stop.ToS - stop.FromS, 465, 485);
    }

    [Fact]
    public void RestBeforeTheFirstStart_IsNoStop() =>
        Assert.DoesNotContain(
            Journeys(s_van, Warm([new(LegKind.Parked, 10), new(LegKind.Country, 30)])),
            j => j.Type == JourneyType.Stop);

    [Fact]
    public void LongStanding_GivesTheLossCoefficientWithAnHonestDeviation()
    {
        // The simulated van's own loss coefficient is the truth; the valves are closed.
        var traits = s_van with
        {
            Tank = s_van.Tank with { LossWPerK = 0.8, LossRiseShare = 0 },
            Shelter = s_van.Shelter with { NearTankShare = 0 },
        };
        var plan = Parked(12, 70).With(new Happening(0, HappeningKind.ValvesClosed, 1e9));
        var standing = Assert.Single(Journeys(traits, plan), j => j.Type == JourneyType.Standing);
        var loss = standing.LossWPerK!.Value;
        Assert.InRange(loss.Value, 0.8 * 0.94, 0.8 * 1.06);
        Assert.InRange(loss.Deviation / loss.Value, 0.001, 0.05);
    }

    [Fact]
    public void ShortStanding_GivesNoLossCoefficient()
    {
        var plan = Parked(4, 70).With(new Happening(0, HappeningKind.ValvesClosed, 1e9));
        Assert.Null(Assert.Single(Journeys(s_van, plan), j => j.Type == JourneyType.Standing).LossWPerK);
    }

    [Fact]
    public void CirculationThatLooksLikeADrawForAMinute_DoesNotCutTheRest()
    {
        // GIVEN a warm tank with open valves, whose coolant turns by itself and takes heat out in bouts: nobody draws.
        var journeys = Journeys(s_van, Parked(4, 70));

        // THEN what is told to stand adds up to all of the time but what was taken for a draw (at most one bout in four
        // hours).
        var drawnS = journeys.Where(j => j.Type == JourneyType.Draw).Sum(j => j.ToS - j.FromS);
        Assert.InRange(drawnS, 0, 300);
        Assert.InRange(journeys.Where(j => j.Type == JourneyType.Standing).Sum(j => j.ToS - j.FromS),
            (4 * 3600) - drawnS - 60, 4 * 3600);
    }

    [Fact]
    public void ElementNight_IsAHeatingRunByTheElement()
    {
        var plan = Parked(10, 30).With(
            new Happening(0, HappeningKind.ValvesClosed, 1e9), new Happening(7200, HappeningKind.Element, 2 * 3600));
        var heating = Assert.Single(Journeys(s_van.With(Kits.Everything), plan), j => j.Type == JourneyType.Heating);
        Assert.InRange(heating.FromS, 7100, 7500);
        Assert.InRange(heating.ToS, 14_300, 14_900);
        var element = Assert.Single(heating.BySource);
        Assert.Equal(HeatSource.Element, element.Source);
        Assert.InRange(element.GainedKWh / heating.GainedKWh, 0.95, 1.05);

        // The simulated element gives 350 W, of which the tank loses a few tens; the estimate itself may be 5 % off.
        Assert.InRange(element.MeanWatts, 290, 350 * 1.05);
        Assert.NotNull(heating.ToFortyS);
    }

    [Fact]
    public void HoseAboveItsRating_IsCountedInMinutes()
    {
        var description = Described(s_van.Fitted) with
        {
            Circuit = new CircuitDescription { Parts = [new CircuitPart("hose", "hose", Channel.Flow, 70)] },
        };
        var overS = 0.0;
        var plan = Warm([new(LegKind.Country, 60)]);
        var van = new SimulatedVan(s_van, plan, 1);
        while (van.Step())
        {
            overS += van.Scan[Channel.Flow].Value > 70 ? plan.ScanPeriodS : 0;
        }

        var heating = Assert.Single(Journeys(s_van, plan, description), j => j.Type == JourneyType.Heating);
        var part = Assert.Single(heating.OverRating);
        Assert.InRange(part.Minutes, overS / 60 * 0.95, overS / 60 * 1.02);
    }

    [Fact]
    public void DrainedTank_HasNoJourneys()
    {
        var plan = Warm([new(LegKind.Country, 60)]) with
        {
            Actions = [new PlannedAction(0, new PersonAction(ActionKind.Drained, "", ""))],
        };
        Assert.Empty(Journeys(s_van, plan));
    }

    private static DrivePlan Parked(double hours, double celsius) => new()
    {
        Legs = [new(LegKind.Parked, hours * 60)], TankBottomCelsius = celsius, TankTopCelsius = celsius,
        ScanPeriodS = 5,
    };

    private static DrivePlan Warm(Leg[] legs) =>
        new() { Legs = legs, TankBottomCelsius = 20, TankTopCelsius = 20, EngineCelsius = 80 };

    private static VanDescription Described(FittedSet fitted) =>
        new() { Fitted = fitted, Tank = new TankDescription { VesselMassKg = 5.4 } };

    private static List<Journey> Journeys(VanTraits traits, DrivePlan plan, VanDescription? description = null)
    {
        var van = new SimulatedVan(traits, plan, 1);
        var monitor = new Core.Monitor(
            description ?? Described(traits.Fitted), KeptState.Fresh, ForecastTiming.WhenAsked);
        List<Journey> journeys = [];
        while (van.Step())
        {
            journeys.AddRange(monitor.Observe(van.Scan).Journeys);
        }

        return [.. journeys, .. monitor.EndJourneys()];
    }
}
