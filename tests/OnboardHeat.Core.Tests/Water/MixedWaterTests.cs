using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tests.Water;

public sealed class MixedWaterTests
{
    // The worked example of SIA 385/2: 40 standard litres (60 °C over 10 °C) at 45 °C are 57; 45 are 64; 55 are 79.
    [Theory]
    [InlineData(40, 57)]
    [InlineData(45, 64)]
    [InlineData(55, 79)]
    public void StandardLitresAt45C_AreThoseOfTheWorkedExample(double standardLitres, double litres) =>
        Assert.Equal(litres, MixedWater.EquivalentLitres(standardLitres, 45, 10)!.Value, 0.5);

    // Derived from the SR6-08(2011) enthalpies of check values: 40 °C from 80/10 is 0.42842, from 60/10 0.60010.
    [Theory]
    [InlineData(80, 0.42842)]
    [InlineData(60, 0.60010)]
    public void HotShare_IsWithin4In10000OfTheEnthalpyBalance(double hot, double share)
    {
        Assert.Equal(share, HotShare(hot, 10, 40), share * 4e-4);
        var byEnthalpy = (WaterProperties.EnthalpyJPerKg(40) - WaterProperties.EnthalpyJPerKg(10))
            / (WaterProperties.EnthalpyJPerKg(hot) - WaterProperties.EnthalpyJPerKg(10));
        Assert.Equal(share, byEnthalpy, 2e-5);
    }

    [Theory]
    [InlineData(60, 45, 40, 0)]
    [InlineData(60, 40, 40, 0)]
    [InlineData(35, 12, 40, 1)]
    [InlineData(40, 12, 40, 1)]
    public void ColdAboveTheMixOrHotBelowIt_GivesNoInfinity(double hot, double cold, double mixed, double share) =>
        Assert.Equal(share, HotShare(hot, cold, mixed));

    [Fact]
    public void HotNoWarmerThanCold_HasNoEquivalent() => Assert.Null(MixedWater.EquivalentLitres(40, 12, 12));

    private static double HotShare(double hot, double cold, double mixed) =>
        MixedWater.HotShare(new Celsius(hot), new Celsius(cold), new Celsius(mixed));
}
