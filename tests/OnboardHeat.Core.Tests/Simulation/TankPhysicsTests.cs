using OnboardHeat.Simulation;
using OnboardHeat.Simulation.Physics;

namespace OnboardHeat.Core.Tests.Simulation;

public sealed class TankPhysicsTests
{
    private static readonly TankTraits s_plain =
        new() { VolumeLitres = 24, SteelKg = 0, LossRiseShare = 0, ColdCelsius = 12 };

    [Fact]
    public void StandingTank_FollowsNewtonsCooling()
    {
        // Newton's law: 95 °C above 20 °C surroundings stands at 20 + 75/e = 47.591 °C after one time constant. The
        // water's heat a kelvin changes by 2 % on the way, so the time constant is taken at the mean temperature and
        // 0.6 K allowed for it.
        var tank = new LayeredTank(s_plain with { LossWPerK = 0.8 }, new HeatBook());
        tank.Fill(95, 95, 0.5);
        var heatJPerK = 24 * (4210 - (1.62 * 66));
        for (var elapsed = 0.0; elapsed < heatJPerK / 0.8; elapsed += 10)
        {
            tank.Stand(10, 20, isTravelling: false);
        }

        Assert.InRange(Mean(tank), 47.591 - 0.6, 47.591 + 0.6);
    }

    [Theory]
    [InlineData(10, 4193.9)]
    [InlineData(40, 4146.8)]
    [InlineData(60, 4114.6)]
    [InlineData(80, 4078.5)]
    public void HeatOfALitreAKelvin_AgreesWithIapws(double celsius, double joules)
    {
        // Density times specific heat of IAPWS SR6-08(2011), 0.1 MPa.
        var slope = (Fluids.WaterJPerLitre(celsius + 0.5) - Fluids.WaterJPerLitre(celsius - 0.5)) / 1.0;
        Assert.InRange(slope / joules, 0.998, 1.002);
    }

    [Theory]
    [InlineData(75)]
    [InlineData(60)]
    [InlineData(50)]
    public void DrawnTank_LastsBetweenFullyMixedAndPlugFlow(double hotCelsius)
    {
        // Heat balance, closed forms: mixed V (Th - Tm)/(q (Tm - Tc)), plug V (Th - Tc)/(q (Tm - Tc)); 24 L, 12 °C, 38
        // °C, 6 L/min. The shower counts until the mix is 1 K short, which lengthens the mixed bound: Tm - 1 stands in
        // its numerator.
        var mixed = 24 * (hotCelsius - 38) / (6 * (38 - 12.0));
        var plug = 24 * (hotCelsius - 12) / (6 * (38 - 12.0));
        var minutes = Minutes(s_plain, hotCelsius);
        Assert.InRange(minutes, mixed, plug + 0.2);
    }

    [Theory]
    [InlineData(2, 4.60)]
    [InlineData(5, 5.69)]
    [InlineData(10, 6.22)]
    [InlineData(20, 6.58)]
    public void LayersInSeries_LastAsTheClosedFormSays(int layers, double minutes)
    {
        // N stirred layers in series, 24 L at 60 °C, cold 12 °C, mix 38 °C, 6 L/min, to the mix itself (derived,
        // numerically, from the heat balance of N equal layers). Here the last kelvin counts too, and the last layer
        // empties fast: up to 0.25 min more.
        var traits = s_plain with { LayerCount = layers, StirringShare = 0, ConductionWPerMK = 0 };
        Assert.InRange(Minutes(traits, 60), minutes - 0.03, minutes + 0.25);
    }

    [Fact]
    public void WarmWaterBelow_RisesAndNeverFalls()
    {
        var tank = new LayeredTank(s_plain with { LossWPerK = 0 }, new HeatBook());
        tank.Fill(20, 20, 0.5);
        for (var i = 0; i < 3000; i++)
        {
            tank.AddHeat(3, 1000);
            tank.Stand(1, 20, isTravelling: false);
        }

        Assert.True(tank.TopCelsius > tank.Celsius[0] + 10, "what lies under the heater stays cold");
        for (var i = 1; i < tank.Count; i++)
        {
            Assert.True(tank.Celsius[i] > tank.Celsius[i - 1] - 1, $"layer {i} lies cold on warm");
        }
    }

    [Fact]
    public void NearFreezing_TheColderWaterIsTheLighter()
    {
        // Water is densest at 4 °C (IAPWS): a layer of 1 °C rests on one of 4 °C.
        var tank = new LayeredTank(s_plain with { LossWPerK = 0, ConductionWPerMK = 0 }, new HeatBook());
        tank.Fill(3.5, 0.5, 0.5);
        tank.Stand(100, 0, isTravelling: false);
        Assert.Equal(0.5, tank.TopCelsius, 6);
        Assert.Equal(3.5, tank.Celsius[0], 6);
    }

    private static double Minutes(TankTraits traits, double hotCelsius)
    {
        var plan = new DrivePlan
        {
            Legs = [new Leg(LegKind.Parked, 10)], TankBottomCelsius = hotCelsius, TankTopCelsius = hotCelsius,
            ShelterCelsius = hotCelsius,
        };
        var van = new SimulatedVan(new VanTraits { Tank = traits }, plan, 1);
        return van.TrueShowerMinutes(38, 6);
    }

    private static double Mean(LayeredTank tank)
    {
        double sum = 0;
        foreach (var celsius in tank.Celsius)
        {
            sum += celsius;
        }

        return sum / tank.Count;
    }
}
