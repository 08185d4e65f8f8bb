using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Shower;

/// <summary>How long a shower lasts from a layered tank with heating off.</summary>
internal static class LayeredShower
{
    /// <summary>Fall of the mix that ends a shower, K.</summary>
    public const double EndsBelowK = 1;

    /// <summary>
    /// Step, in layers: half a layer keeps the minutes within 0.02 of ever shorter steps (a test holds it).
    /// </summary>
    public const double StepLayers = 0.5;

    /// <summary>
    /// A shower never lasts longer than this in a forecast, min: a summer tank with cold water as warm as the mix has
    /// no end.
    /// </summary>
    public const double LongestMinutes = 600;

    /// <summary>
    /// Minutes until the mix falls 1 K below its set point; zero when the top is there already. Uses up the layers
    /// given.
    /// </summary>
    public static double Minutes(Span<double> layers, TankGeometry tank, ShowerDescription shower, double coldCelsius)
    {
        var minutes = 0.0;
        var endCelsius = shower.MixedCelsius - EndsBelowK;
        while (minutes < LongestMinutes)
        {
            var top = layers[^1];
            if (top <= endCelsius)
            {
                return minutes;
            }

            var leaving = LayeredTank.DrawStep(layers, StepLayers, coldCelsius);
            var hotShare = MixedWater.HotShare(
                new Celsius(leaving), new Celsius(coldCelsius), new Celsius(shower.MixedCelsius));
            var hotLPerMin = shower.FlowLitresPerMinute * hotShare;
            var stepMin = hotLPerMin > 0 ? StepLayers * tank.LayerLitres / hotLPerMin : LongestMinutes;
            if (layers[^1] < endCelsius)
            {
                // The end lies within this step: by how far the top had to fall to it.
                return minutes + (stepMin * (top - endCelsius) / (top - layers[^1]));
            }

            minutes += stepMin;
        }

        return LongestMinutes;
    }

    /// <summary>
    /// The most minutes that such layers can give: all heat above the cold supply goes into the mix (plug flow). No
    /// draw gives more.
    /// </summary>
    public static double MostMinutes(
        ReadOnlySpan<double> layers, TankGeometry tank, ShowerDescription shower, double coldCelsius)
    {
        var endCelsius = shower.MixedCelsius - EndsBelowK;
        if (endCelsius <= coldCelsius)
        {
            return LongestMinutes;
        }

        var litresK = 0.0;
        foreach (var layer in layers)
        {
            litresK += tank.LayerLitres * Math.Max(0, layer - coldCelsius);
        }

        return litresK / ((endCelsius - coldCelsius) * shower.FlowLitresPerMinute);
    }
}
