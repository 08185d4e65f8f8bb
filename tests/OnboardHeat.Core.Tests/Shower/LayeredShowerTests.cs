using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tests.Shower;

public sealed class LayeredShowerTests
{
    private static readonly TankGeometry s_tank = new(new TankDescription { VolumeLitres = 24 });
    private static readonly ShowerDescription s_shower = new() { MixedCelsius = 38, FlowLitresPerMinute = 6 };

    // Closed forms for 24 litres, cold 12 °C, mixed 38 °C at 6 l/min (derived): fully mixed V (Th-Tm)/(q (Tm-Tc)) is
    // the least that such a tank can give, plug flow V (Th-Tc)/((Tm-Tc) q) the most.
    [Theory]
    [InlineData(75, 5.69, 9.69)]
    [InlineData(60, 3.38, 7.38)]
    [InlineData(50, 1.85, 5.85)]
    public void Minutes_LieBetweenFullyMixedAndPlugFlow(double hot, double mixed, double plug) =>
        Assert.InRange(Minutes(hot, 12), mixed, plug);

    [Fact]
    public void HotWaterAt60C_LastsAsTenToTwelveVesselsInSeries()
    {
        // Layers in series, 60 °C: 5.69 min with five, 6.22 with ten, 6.58 with twenty (derived, until the mix is
        // missed by nothing). Twelve with the lowest two stirred lie near ten; stopping 1 K later adds some seconds.
        Assert.InRange(Minutes(60, 12), 6.0, 6.6);
    }

    [Fact]
    public void ShorterSteps_ChangeTheMinutesByLess()
    {
        // Steps of the unsmeared length are of first order: they smear the front just as the long ones say they do.
        var layers = Uniform(65);
        var minutes = 0.0;
        while (layers[^1] > 37)
        {
            var leaving = LayeredTank.DrawStep(layers, TankGeometry.Unsmeared, 12);
            var hot = 6 * MixedWater.HotShare(new Celsius(leaving), new Celsius(12), new Celsius(38));
            minutes += TankGeometry.Unsmeared * s_tank.LayerLitres / hot;
        }

        Assert.Equal(minutes, Minutes(65, 12), 0.05);
    }

    [Fact]
    public void DrawStep_ConservesHeatAndStaysBetweenWhatMeets()
    {
        double[] layers = [12, 15, 20, 31, 44, 50, 55, 58, 60, 60, 61, 65];
        var before = layers.Sum();
        var leaving = LayeredTank.DrawStep(layers, 0.5, 10);
        Assert.Equal(before + (0.5 * (10 - leaving)), layers.Sum(), 1e-9);
        Assert.All(layers, layer => Assert.InRange(layer, 10, 65));
    }

    [Theory]
    [InlineData(30)]
    [InlineData(36.9)]
    public void TopBelowTheMix_GivesNone(double hot) => Assert.Equal(0, Minutes(hot, 12));

    [Fact]
    public void ColdAsWarmAsTheMix_EndsAtTheLongestForecastNotInInfinity()
    {
        var minutes = Minutes(60, 45);
        Assert.True(double.IsFinite(minutes));
        Assert.InRange(minutes, 0, LayeredShower.LongestMinutes);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(30)]
    public void AnyFlow_GivesTheSameLitres(double flow)
    {
        var layers = Uniform(60);
        var litres = flow * LayeredShower.Minutes(layers, s_tank, s_shower with { FlowLitresPerMinute = flow }, 12);
        Assert.Equal(6 * Minutes(60, 12), litres, flow < 1 ? 0.5 : 0.01);
    }

    private static double Minutes(double hot, double cold) =>
        LayeredShower.Minutes(Uniform(hot), s_tank, s_shower, cold);

    private static double[] Uniform(double celsius) => [.. Enumerable.Repeat(celsius, TankGeometry.Layers)];
}
