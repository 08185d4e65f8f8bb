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
            var leaving = DrawStep(layers, cold);
            var mixedMin = coldCelsius < shower.MixedCelsius ? minPerK * (leaving - cold) : longest;
            var stepMin = Vector256.ConditionalSelect(Vector256.GreaterThan(leaving, mix), mixedMin, allHotMin);
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

    private static Vector256<double> DrawStep(Span<Vector256<double>> layers, Vector256<double> cold)
    {
        const int Stirred = TankGeometry.StirredLayers;
        var share = Vector256.Create(LayeredShower.StepLayers);
        var half = share * (share - Vector256.Create(TankGeometry.Unsmeared)) * 0.5;
        var stirred = Vector256<double>.Zero;
        for (var i = 0; i < Stirred; i++)
        {
            stirred += layers[i];
        }

        stirred *= 1.0 / Stirred;
        layers[..Stirred].Fill(stirred);
        var leaving = layers[N - 1] + (half / share * (layers[N - 2] - layers[N - 1]));
        for (var i = N - 1; i > Stirred; i--)
        {
            var rise = layers[i - 1] - layers[i];
            layers[i] += (share * rise) + (half * (layers[i - 2] - layers[i - 1] - rise));
        }

        var enters = (cold - stirred) * (1.0 / Stirred);
        var above = stirred - layers[Stirred];
        layers[Stirred] += (share * above) + (half * (enters - above));
        layers[..Stirred].Fill(stirred + (share * enters) - (half * enters * (1.0 / Stirred)));
        return leaving;
    }
}
