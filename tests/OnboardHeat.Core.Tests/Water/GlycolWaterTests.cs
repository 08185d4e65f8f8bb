using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tests.Water;

public sealed class GlycolWaterTests
{
    // 50 % by mass, rows of the Melinder 2010 correlation evaluated elsewhere with a public library's coefficients,
    // rounded as printed.
    [Theory]
    [InlineData(0, 1074.6, 3203)]
    [InlineData(20, 1064.9, 3312)]
    [InlineData(40, 1053.4, 3413)]
    [InlineData(60, 1040.5, 3503)]
    [InlineData(80, 1026.4, 3582)]
    [InlineData(90, 1019.0, 3616)]
    [InlineData(100, 1011.5, 3646)]
    public void HalfByMass_MatchesMelinder(double celsius, double density, double specificHeat)
    {
        Assert.Equal(density, 1000 * GlycolWater.DensityKgPerLitre(celsius, 0.5), 0.1);
        Assert.Equal(specificHeat, GlycolWater.SpecificHeatJPerKgK(celsius, 0.5), 1.0);
    }

    [Theory]
    [InlineData(60, 1043.4, 3457)]
    [InlineData(80, 1029.2, 3538)]
    [InlineData(90, 1021.8, 3574)]
    public void HalfByVolume_Is52Point7PercentByMass(double celsius, double density, double specificHeat)
    {
        Assert.Equal(density, 1000 * GlycolWater.DensityKgPerLitre(celsius, 0.527), 0.15);
        Assert.Equal(specificHeat, GlycolWater.SpecificHeatJPerKgK(celsius, 0.527), 1.0);
    }

    // A maker's data sheet, row '0.5': it lies 1.3 to 1.5 % above Melinder and does not say whether by mass or volume,
    // hence 2 %.
    [Theory]
    [InlineData(20, 1079)]
    [InlineData(40, 1067)]
    [InlineData(60, 1055)]
    [InlineData(80, 1042)]
    public void MakersTable_AgreesWithinTwoPercent(double celsius, double density) =>
        Assert.InRange(1000 * GlycolWater.DensityKgPerLitre(celsius, 0.5) / density, 0.98, 1.02);

    [Theory]
    [InlineData(10, 1e-3)]
    [InlineData(80, 5e-3)]
    public void NoGlycol_IsWater(double celsius, double tolerance) =>
        Assert.Equal(WaterProperties.DensityKgPerLitre(celsius), GlycolWater.DensityKgPerLitre(celsius, 0), tolerance);

    [Fact]
    public void CoolantAt80C_CarriesATenthLessHeatThanWater()
    {
        // Derived: 3.676 against 4.079 MJ/(m3 K).
        Assert.Equal(3676, GlycolWater.HeatCapacityJPerLitreK(80, 0.5), 2.0);
    }
}
