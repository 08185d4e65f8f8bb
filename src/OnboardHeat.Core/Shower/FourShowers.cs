using System.Runtime.Intrinsics;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>
/// <see cref="LayeredShower"/> for four members of an ensemble at once, since a forecast asks all of them. A test holds
/// it against the single shower.
/// </summary>
internal static class FourShowers
{
    private const int N = TankGeometry.Layers;

    /// <summary>Minutes until each mix falls 1 K below its set point. Uses up the layers given, bottom first.</summary>
    public static Vector256<double> Minutes(
        Span<Vector256<double>> layers, TankGeometry tank, ShowerDescription shower, double coldCelsius)
    {
        var longest = Vector256.Create(LayeredShower.LongestMinutes);
        var mix = Vector256.Create(shower.MixedCelsius);
        var end = Vector256.Create(shower.MixedCelsius - LayeredShower.EndsBelowK);
        var cold = Vector256.Create(coldCelsius);
        var allHotMin = Vector256.Create(LayeredShower.StepLayers * tank.LayerLitres / shower.FlowLitresPerMinute);
        var minPerK = allHotMin / (mix - cold);
        var minutes = Vector256<double>.Zero;
        var running = Vector256.GreaterThan(layers[N - 1], end);
        while (running != Vector256<double>.Zero)
        {
            var top = layers[N - 1];
            var mixedMin = coldCelsius < shower.MixedCelsius ? minPerK * (top - cold) : longest;
            var stepMin = Vector256.ConditionalSelect(Vector256.GreaterThan(top, mix), mixedMin, allHotMin);
            DrawStep(layers, cold);
            var ends = Vector256.LessThan(layers[N - 1], end) & running;
            if (ends != Vector256<double>.Zero)
            {
                // The end lies within this step: by how far the top had to fall to it.
                stepMin = Vector256.ConditionalSelect(ends, stepMin * (top - end) / (top - layers[N - 1]), stepMin);
            }

            minutes += stepMin & running;
            running &= ~ends & Vector256.LessThan(minutes, longest) & Vector256.GreaterThan(layers[N - 1], end);
        }

        return Vector256.Min(minutes, longest);
    }

    private static void DrawStep(Span<Vector256<double>> layers, Vector256<double> cold)
    {
        var share = Vector256.Create(LayeredShower.StepLayers);
        var stirred = Vector256<double>.Zero;
        for (var i = 0; i < TankGeometry.StirredLayers; i++)
        {
            stirred += layers[i];
        }

        stirred /= Vector256.Create((double)TankGeometry.StirredLayers);
        for (var i = N - 1; i > TankGeometry.StirredLayers; i--)
        {
            layers[i] += share * (layers[i - 1] - layers[i]);
        }

        layers[TankGeometry.StirredLayers] += share * (stirred - layers[TankGeometry.StirredLayers]);
        var entering = share / Vector256.Create((double)TankGeometry.StirredLayers);
        layers[..TankGeometry.StirredLayers].Fill(stirred + (entering * (cold - stirred)));
    }
}
