using OnboardHeat.Core.Journeys;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Journeys;

public sealed class LikeForLikeTests
{
    private const double HeatJPerK = 102_000;

    [Fact]
    public void CoolingFromAnotherStart_FollowsNewtonsLaw()
    {
        // Newton's law of cooling (any textbook of heat transfer, lumped capacity): excess falls by exp(-K t / C).
        var course = Cooling(70, 20, 0.8);
        var put = LikeForLike.Put(course, 55, 5, 0.8, 0, HeatJPerK);
        for (var i = 0; i < course.Count; i++)
        {
            var expected = 5 + (50 * Math.Exp(-0.8 * course[i].AtS / HeatJPerK));
            Assert.Equal(expected, put[i], 0.001);
        }
    }

    [Fact]
    public void OnItsOwnFooting_NothingChanges()
    {
        var course = Cooling(70, 20, 0.8);
        var put = LikeForLike.Put(course, 70, 20, 0.8, 0, HeatJPerK);
        Assert.All(course.Zip(put), pair => Assert.Equal(pair.First.WaterCelsius, pair.Second, 1e-9));
    }

    [Fact]
    public void WarmCoolant_TakesAwayADifferentStartWithinItsOwnTime()
    {
        // An hour of 50 W/K on 102 kJ/K: a shift of 20 K is left with exp(-(50 + 0.8) * 3600 / 102000) of itself.
        var course = Enumerable.Range(0, 61).Select(i => new CoursePoint(i * 60, 40, 20, true)).ToList();
        var put = LikeForLike.Put(course, 60, null, 0.8, 50, HeatJPerK);
        Assert.Equal(20 * Math.Exp(-50.8 * 3600 / HeatJPerK), put[^1] - 40, 1e-6);
    }

    [Fact]
    public void UnknownSurroundings_AreTakenAsBefore()
    {
        var course = Cooling(70, 20, 0.8);
        var holed = course.Select((point, i) => i % 3 == 0 ? point : point with { SurroundingsCelsius = null })
            .ToList();
        Assert.Equal(LikeForLike.Put(course, 55, 5, 0.8, 0, HeatJPerK),
            LikeForLike.Put(holed, 55, 5, 0.8, 0, HeatJPerK));
    }

    [Fact]
    public void NothingRecorded_GivesNothing() => Assert.Empty(LikeForLike.Put([], 55, 5, 0.8, 0, HeatJPerK));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void SimulatedVanOnAnotherMorning_FallsOntoItself(bool isDriven)
    {
        // GIVEN one simulated van twice: warm tank in a mild place, cool tank in a cold one.
        Leg[] legs = isDriven ? [new(LegKind.Country, 60)] : [new(LegKind.Parked, 8 * 60)];
        var plan = new DrivePlan
        {
            Legs = legs, ScanPeriodS = 10, DaySwingK = 3, EngineCelsius = 80, OutsideCelsius = 18,
                TankBottomCelsius = 40, TankTopCelsius = 40,
        };
        // Parked with the valves closed: circulation by buoyancy would be a second loss that no constant describes.
        plan = isDriven ? plan
            : (plan with { TankBottomCelsius = 70, TankTopCelsius = 70 })
                .With(new Happening(0, HappeningKind.ValvesClosed, 1e9));
        var (mild, surroundings) = Course(plan);
        var (cold, _) = Course(plan with { OutsideCelsius = 4, TankBottomCelsius = 22, TankTopCelsius = 22 });

        // WHEN the warm course is put on the footing of the cold one THEN their ends meet, which lay apart.
        var put = LikeForLike.Put(cold, mild[0].WaterCelsius, surroundings, 0.8, 55, HeatJPerK);
        Assert.True(Math.Abs(mild[^1].WaterCelsius - cold[^1].WaterCelsius) > (isDriven ? 4 : 20));
        Assert.InRange(put[^1] - mild[^1].WaterCelsius, -2.5, 2.5);
    }

    private static (List<CoursePoint> Course, double SurroundingsCelsius) Course(DrivePlan plan)
    {
        var van = new SimulatedVan(new VanTraits(), plan, 3);
        List<CoursePoint> course = [];
        while (van.Step())
        {
            var truth = van.Truth;
            course.Add(new CoursePoint(truth.ElapsedS, truth.MeanCelsius, truth.SurroundingsCelsius, truth.CoilW > 50));
        }

        return (course, course.Average(point => point.SurroundingsCelsius!.Value));
    }

    private static List<CoursePoint> Cooling(double startCelsius, double aroundCelsius, double lossWPerK) =>
    [
        .. Enumerable.Range(0, 97).Select(i => new CoursePoint(
            i * 300, aroundCelsius + ((startCelsius - aroundCelsius) * Math.Exp(-lossWPerK * i * 300 / HeatJPerK)),
            aroundCelsius, false)),
    ];
}
