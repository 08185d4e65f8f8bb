using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>What becomes of the tank if heating goes on as now.</summary>
internal static class HeatingForecast
{
    /// <summary>Step, s, and how far it looks, s: nobody plans a shower by a drive longer than that.</summary>
    private const double StepS = 120, HorizonS = 4 * 3600;

    /// <summary>Steps between two looks at the minutes of shower.</summary>
    private const int LookEvery = 3;

    /// <summary>Seconds until so many minutes of shower are there, and the mean that the heating ends at, °C.</summary>
    public static (double? ReadyInS, double PeakCelsius) Follow(TankEstimator estimator, VanDescription van, in TankSurrounds around)
    {
        Span<double> layers = stackalloc double[TankGeometry.Layers];
        Span<double> drawn = stackalloc double[TankGeometry.Layers];
        for (var i = 0; i < layers.Length; i++)
        {
            layers[i] = estimator.Current.LayerCelsius[i];
        }

        double? readyInS = null;
        var (minutesBefore, peak) = (0.0, LayeredTank.Mean(layers));
        for (var step = 1; step * StepS <= HorizonS; step++)
        {
            LayeredTank.Pass(layers, estimator.Geometry, around, StepS);
            LayeredTank.Mix(layers);
            peak = Math.Max(peak, LayeredTank.Mean(layers));
            if (readyInS is not null || step % LookEvery != 0)
            {
                continue;
            }

            layers.CopyTo(drawn);
            var minutes = LayeredShower.Minutes(drawn, estimator.Geometry, van.Shower, van.Tank.ColdSupplyCelsius);
            if (minutes >= van.Shower.UsefulMinutes)
            {
                var share = (van.Shower.UsefulMinutes - minutesBefore) / (minutes - minutesBefore);
                readyInS = StepS * (step - LookEvery + (LookEvery * Math.Clamp(share, 0, 1)));
            }

            minutesBefore = minutes;
        }

        return (readyInS, peak);
    }
}
