using CsCheck;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class LayeredTankTests
{
    private static readonly TankGeometry s_tank = new(new TankDescription { VolumeLitres = 24 });

    private static readonly Gen<double[]> s_profile = Gen.Double[0, 95].Array[TankGeometry.Layers];

    [Fact]
    public void AfterOneTimeConstant_47Point591Remains()
    {
        // Newton cooling from 95 °C in 20 °C air: 20 + 75/e = 47.591 °C (derived). Steps of a thousandth of the time
        // constant: the implicit step is first order, 0.02 K off.
        var layers = Uniform(95);
        var lossWPerK = 1.0;
        var tauS = s_tank.TotalJPerK / lossWPerK;
        for (var i = 0; i < 1000; i++)
        {
            LayeredTank.Pass(layers, s_tank, new TankSurrounds(20, lossWPerK, 0, 0, 0, 1, 0), tauS / 1000);
            LayeredTank.Mix(layers);
        }

        // The plates' extra loss tilts the profile a little, which changes the mean's fall by a little.
        Assert.Equal(47.591, LayeredTank.Mean(layers), 0.15);
    }

    [Fact]
    public void WellMixedTankWithCoil_FollowsTheExactStep()
    {
        // dT/dt = a + bT, T(t) = (a/b + Ti) e^(bt) - a/b (the exact step of a well-mixed tank, EnergyPlus engineering
        // reference).
        double uncertain = 0.03, lossWPerK = 0.8, coilWPerK = 45, coolant = 85, air = 10, start = 15, spanS = 3600;
        var b = -(lossWPerK + coilWPerK) / s_tank.TotalJPerK;
        var a = ((lossWPerK * air) + (coilWPerK * coolant)) / s_tank.TotalJPerK;
        var exact = (((a / b) + start) * Math.Exp(b * spanS)) - (a / b);
        var layers = Uniform(start);
        for (var i = 0; i < 3600; i++)
        {
            LayeredTank.Pass(
                layers, s_tank, new TankSurrounds(air, lossWPerK, coolant, coilWPerK, 0, TankGeometry.Layers, 0), 1);
            LayeredTank.Mix(layers);
        }

        Assert.Equal(exact, LayeredTank.Mean(layers), uncertain);
    }

    [Fact]
    public void AnySequence_KeepsAccountOfEveryJoule()
    {
        // Heat in the tank changes by what coil and element brought, less what was lost and what went out with the
        // draw: to 1e-9.
        var gen = Gen.Select(
            s_profile, Gen.Double[-20, 40], Gen.Double[0, 3], Gen.Double[-20, 110], Gen.Double[0, 100],
            Gen.Double[2, 12],
            Gen.Double[0, 1500], Gen.Double[0.1, 600]);
        gen.Sample(
            (profile, air, loss, coolant, coil, reach, element, stepS) =>
            {
                var layers = profile.ToArray();
                LayeredTank.Mix(layers);
                Near(profile.Sum(), layers.Sum(), profile.Sum());
                var around = new TankSurrounds(air, loss, coolant, coil, 0.5, reach, element);
                var before = Heat(layers);
                var heated = LayeredTank.Pass(layers, s_tank, around, stepS);
                var lost = Enumerable.Range(0, TankGeometry.Layers)
                    .Sum(i => stepS * loss * TankGeometry.LossShare(i) * (layers[i] - air));
                Near(before + heated - lost, Heat(layers), Math.Abs(before) + Math.Abs(heated) + Math.Abs(lost) + 1e4);
                var full = Heat(layers);
                var out12 = LayeredTank.Draw(layers, 3.7, 12);
                Near(full - (3.7 * s_tank.LayerJPerK * (out12 - 12)), Heat(layers), Math.Abs(full) + 1e4);
            },
            seed: "0N0XIzNsQ0O2", iter: 500);
    }

    [Fact]
    public void AnySequence_StaysBetweenTheColdestAndTheHottest()
    {
        var gen = Gen.Select(
            s_profile, Gen.Double[-20, 40], Gen.Double[0, 20], Gen.Double[0, 110], Gen.Double[0, 500],
            Gen.Double[0.1, 1e5], Gen.Double[0, 40]);
        gen.Sample(
            (profile, air, loss, coolant, coil, stepS, drawn) =>
            {
                var layers = profile.ToArray();
                var low = Math.Min(profile.Min(), Math.Min(air, Math.Min(coolant, 5))) - 1e-6;
                var high = Math.Max(profile.Max(), Math.Max(5, Math.Max(air, coolant))) + 1e-6;
                LayeredTank.Pass(layers, s_tank, new TankSurrounds(air, loss, coolant, coil, 0, 6, 0), stepS);
                LayeredTank.Mix(layers);
                LayeredTank.Draw(layers, drawn, 5);
                Assert.All(layers, layer => Assert.InRange(layer, low, high));
            },
            seed: "0N0XIzNsQ0O2", iter: 500);
    }

    [Fact]
    public void Mix_LeavesNoLayerWarmerThanTheOneAbove() => s_profile.Sample(
        profile =>
        {
            LayeredTank.Mix(profile);
            for (var i = 1; i < profile.Length; i++)
            {
                Assert.True(profile[i] >= profile[i - 1]);
            }
        },
        seed: "0N0XIzNsQ0O2", iter: 300);

    [Fact]
    public void Shares_SumToOne()
    {
        Assert.Equal(1, Enumerable.Range(0, TankGeometry.Layers).Sum(TankGeometry.LossShare), 12);
        Gen.Select(Gen.Double[0, 1], Gen.Double[1.5, 12]).Sample(
            (foot, reach) => Near(
                1, Enumerable.Range(0, TankGeometry.Layers).Sum(i => TankGeometry.CoilShare(i, foot, reach)), 1),
            seed: "0N0XIzNsQ0O2", iter: 200);
    }

    [Fact]
    public void VesselOf24Litres_AddsAbout2Point7Percent()
    {
        // 24 litres by the default rule: 5.36 kg of steel at 500 J/(kg K), 2.7 % of the water (derived).
        var waterJPerK =
            24 * 1000 * WaterProperties.DensityKgPerLitre(55) * WaterProperties.SpecificHeatJPerKgK(55) / 1000;
        Assert.Equal(0.027, (s_tank.TotalJPerK / waterJPerK) - 1, 0.001);
    }

    private static double Heat(double[] layers) => layers.Sum() * s_tank.LayerJPerK;

    private static double[] Uniform(double celsius) => [.. Enumerable.Repeat(celsius, TankGeometry.Layers)];

    private static void Near(double expected, double actual, double scale) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Abs(scale), $"{expected} {actual}");
}
