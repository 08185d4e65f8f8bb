using System.Runtime.Intrinsics;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>
/// Works out a forecast from the state after a scan. Pure: it changes nothing, so it may be asked for or not.
/// </summary>
internal sealed class ShowerForecaster(VanDescription van)
{
    /// <summary>
    /// What a layered draw leaves out of the minutes, as a share of them and in minutes: how far cold stirs, what
    /// fittings hold back (measured against an independent model of draws: 0.03 min).
    /// </summary>
    private const double DrawShare = 0.008, DrawMin = 0.02;

    /// <summary>
    /// Coolant of an engine that is warm, °C, and the minutes it takes to get there: for a drive that is only thought
    /// of.
    /// </summary>
    private const double WarmCoolantCelsius = 80, WarmUpMin = 8;

    /// <summary>Water near freezing, °C.</summary>
    private const double FrostCelsius = 2;

    /// <summary>The forecast for this state.</summary>
    public Forecast Forecast(double elapsedS, TankEstimator estimator)
    {
        var tank = estimator.Current;
        if (!tank.IsKnown || tank.IsDrained)
        {
            return Shower.Forecast.Unknown with { ElapsedS = elapsedS };
        }

        Span<double> layers = stackalloc double[TankGeometry.Layers];
        CopyLayers(tank, layers);
        var (minutes, low, high) = Minutes(estimator);
        var drawMin = high > 0 ? Estimate.NinetyPercent * ((DrawShare * minutes) + DrawMin) : 0;
        var limit = van.Shower.EffectiveUsableTopCelsius;
        var usableForS = tank.TopCelsius.Value < limit ? null
            : StandingForecast.TopBelowInS(layers, estimator, elapsedS, limit);
        var forecast = new Forecast
        {
            ElapsedS = elapsedS,
            StoredEnergyKWh = tank.StoredJ.Value / 3.6e6,
            StoredEnergyDeviationKWh = tank.StoredJ.Deviation / 3.6e6,
            ShowerMinutes = minutes,
            ShowerMinutesLow = Math.Max(0, minutes - Joint(minutes - low, drawMin)),
            ShowerMinutesHigh = minutes + Joint(high - minutes, drawMin),
            MixedLitres = minutes * van.Shower.FlowLitresPerMinute,
            Until = tank.TopCelsius.Value < limit ? UntilKind.NowBelow
                : usableForS is null ? UntilKind.BeyondSevenDays : UntilKind.At,
            UsableForS = usableForS,
            FrostInS = StandingForecast.BottomBelowInS(layers, estimator, elapsedS, FrostCelsius),
            HeatingWatts = tank.HeatingW.Value,
            LossCoefficientWPerK = tank.LossWPerK.Value,
        };
        return WithHeating(forecast, layers, estimator, minutes);
    }

    /// <summary>
    /// Seconds until the coldest layer nears freezing if the tank stands; null when not within seven days, or not
    /// known.
    /// </summary>
    public double? FrostInS(double elapsedS, TankEstimator estimator)
    {
        if (!estimator.Current.IsKnown)
        {
            return null;
        }

        Span<double> layers = stackalloc double[TankGeometry.Layers];
        CopyLayers(estimator.Current, layers);
        return StandingForecast.BottomBelowInS(layers, estimator, elapsedS, FrostCelsius);
    }

    /// <summary>
    /// Half widths of two causes that know nothing of each other; one that lies on the other side adds nothing.
    /// </summary>
    private static double Joint(double first, double second) =>
        Math.Sqrt(Math.Pow(Math.Max(0, first), 2) + (second * second));

    private static void CopyLayers(TankEstimate tank, Span<double> layers)
    {
        for (var i = 0; i < layers.Length; i++)
        {
            layers[i] = tank.LayerCelsius[i];
        }
    }

    private Forecast WithHeating(
        Forecast forecast, ReadOnlySpan<double> layers, TankEstimator estimator, double minutes)
    {
        var isReady = minutes >= van.Shower.UsefulMinutes;
        if (estimator.HeatingAsNow(WarmCoolantCelsius) is { } around)
        {
            var (readyInS, peak) = HeatingForecast.Follow(layers, estimator.Geometry, van, around);
            return forecast with
            {
                Ready = isReady ? ReadyKind.Now : readyInS is null ? ReadyKind.NotAtThisRate : ReadyKind.At,
                ReadyInS = isReady ? null : readyInS,
                PeakCelsius = peak,
            };
        }

        if (isReady)
        {
            return forecast with { Ready = ReadyKind.Now };
        }

        var driven = estimator.HeatingIfDriven(WarmCoolantCelsius);
        var (driveS, _) = HeatingForecast.Follow(layers, estimator.Geometry, van, driven);
        return forecast with
        {
            Ready = ReadyKind.NotHeating,
            DriveMinutesNeeded = driveS is { } s ? (s / 60) + WarmUpMin : null,
        };
    }

    private (double Value, double Low, double High) Minutes(TankEstimator estimator) =>
        estimator.Belief.Range((ensemble, minutes) =>
    {
        Span<Vector256<double>> layers = stackalloc Vector256<double>[TankGeometry.Layers];
        for (var m = 0; m < minutes.Length; m += 4)
        {
            for (var i = 0; i < layers.Length; i++)
            {
                layers[i] = Vector256.Create<double>(ensemble[Row.Layer + i].Slice(m, 4));
            }

            FourShowers.Minutes(layers, estimator.Geometry, van.Shower, van.Tank.ColdSupplyCelsius)
                .CopyTo(minutes[m..]);
        }
    });
}
