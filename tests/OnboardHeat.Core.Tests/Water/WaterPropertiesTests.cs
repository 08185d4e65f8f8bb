using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tests.Water;

public sealed class WaterPropertiesTests
{
    // Temperature °C, density kg/m3 by IAPWS-95 at 101325 Pa, specific heat kJ/(kg K) and enthalpy kJ/kg by
    // SR6-08(2011) at 0.1 MPa; evaluated with the public library iapws 1.5.3.
    public static TheoryData<double, double, double, double> Rows => new()
    {
        { 4, 999.9749, 4.20737, 16.9120 },
        { 10, 999.7025, 4.19514, 42.1167 },
        { 20, 998.2072, 4.18419, 84.0058 },
        { 25, 997.0476, 4.18145, 104.9194 },
        { 30, 995.6495, 4.17990, 125.8223 },
        { 38, 992.9663, 4.17924, 159.2576 },
        { 40, 992.2164, 4.17936, 167.6162 },
        { 50, 988.0350, 4.18123, 209.4174 },
        { 60, 983.1958, 4.18490, 251.2466 },
        { 70, 977.7646, 4.19012, 293.1205 },
        { 80, 971.7904, 4.19686, 335.0541 },
        { 90, 965.3096, 4.20523, 377.0631 },
        { 95, 961.8879, 4.21012, 398.1013 },
        { 99.9, 958.4209, 4.21545, 418.7437 },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void DensityAndHeatContent_MatchIapws(double celsius, double density, double specificHeat, double enthalpy)
    {
        Assert.Equal(density, 1000 * WaterProperties.DensityKgPerLitre(celsius), 0.02);
        Assert.Equal(1000 * specificHeat, WaterProperties.SpecificHeatJPerKgK(celsius), 2.0);
        Assert.Equal(1000 * enthalpy, WaterProperties.EnthalpyJPerKg(celsius), 3.0);
    }

    [Fact]
    public void ColdWaterHeatedTo80C_ExpandsBy2Point87Percent()
    {
        // Derived from the IAPWS rows: 999.7019 / 971.7898 - 1 = 2.872 %.
        var growth = (WaterProperties.DensityKgPerLitre(10) / WaterProperties.DensityKgPerLitre(80)) - 1;
        Assert.Equal(0.02872, growth, 0.00003);
    }

    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-40)]
    [InlineData(1e308)]
    public void AbsurdTemperature_StaysFinite(double celsius)
    {
        Assert.InRange(WaterProperties.DensityKgPerLitre(celsius), 0.9, 1.01);
        Assert.InRange(WaterProperties.EnthalpyJPerKg(celsius), 0, 420_000);
        Assert.True(
            double.IsFinite(WaterProperties.HeatOf(new Litres(24), new Celsius(celsius), new Celsius(12)).Value));
    }

    [Fact]
    public void SpecificHeat_IsTheSlopeOfTheHeatContent()
    {
        for (var celsius = 1.0; celsius < 99; celsius += 0.5)
        {
            var slope = (WaterProperties.EnthalpyJPerKg(celsius
                + 0.01) - WaterProperties.EnthalpyJPerKg(celsius - 0.01)) / 0.02;
            Assert.Equal(slope, WaterProperties.SpecificHeatJPerKgK(celsius), 0.01);
        }
    }
}
