using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>Works out a forecast from the state after a scan. Pure: it changes nothing, so it may be asked for or not.</summary>
internal sealed class ShowerForecaster(VanDescription van)
{
    /// <summary>The forecast for this state.</summary>
    public Forecast Forecast(double elapsedS, TankEstimate tank)
    {
        if (!tank.IsKnown || tank.IsDrained)
        {
            return Shower.Forecast.Unknown with { ElapsedS = elapsedS };
        }

        var drop = van.Shower.MixedCelsius - van.Tank.ColdSupplyCelsius;
        var minutes = tank.TopCelsius.Value < van.Shower.MixedCelsius - 1
            ? 0
            : van.Tank.VolumeLitres * Math.Max(0, tank.MeanCelsius.Value - van.Tank.ColdSupplyCelsius) / (drop * van.Shower.FlowLitresPerMinute);
        return new Forecast
        {
            ElapsedS = elapsedS,
            StoredEnergyKWh = tank.StoredJ.Value / 3.6e6,
            StoredEnergyDeviationKWh = tank.StoredJ.Deviation / 3.6e6,
            ShowerMinutes = minutes,
            ShowerMinutesLow = 0.7 * minutes,
            ShowerMinutesHigh = 1.1 * minutes,
            MixedLitres = minutes * van.Shower.FlowLitresPerMinute,
        };
    }
}
