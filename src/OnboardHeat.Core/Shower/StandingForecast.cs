using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>What becomes of the tank if it stands untouched from now: the mean layers cool under the air that the days so far promise.</summary>
internal static class StandingForecast
{
    /// <summary>Step, s: a small tank falls some tenths of a kelvin in it, and the crossing is interpolated.</summary>
    private const double StepS = 600;

    /// <summary>How far a forecast looks, s.</summary>
    public const double HorizonS = 7 * 86400;

    /// <summary>Seconds until the top falls below a temperature; null when it does not within seven days.</summary>
    public static double? TopBelowInS(TankEstimator estimator, double elapsedS, double limitCelsius) =>
        FallsBelowInS(estimator, elapsedS, limitCelsius, TankGeometry.Layers - 1);

    /// <summary>Seconds until the coldest layer falls below a temperature; null when it does not within seven days.</summary>
    public static double? BottomBelowInS(TankEstimator estimator, double elapsedS, double limitCelsius) =>
        FallsBelowInS(estimator, elapsedS, limitCelsius, 0);

    private static double? FallsBelowInS(TankEstimator estimator, double elapsedS, double limitCelsius, int layer)
    {
        var tank = estimator.Current;
        Span<double> layers = stackalloc double[TankGeometry.Layers];
        for (var i = 0; i < layers.Length; i++)
        {
            layers[i] = tank.LayerCelsius[i];
        }

        for (var inS = 0.0; inS < HorizonS; inS += StepS)
        {
            var before = layers[layer];
            if (before < limitCelsius)
            {
                return inS;
            }

            var air = estimator.AirAt(elapsedS + inS + (StepS / 2));
            LayeredTank.Pass(layers, estimator.Geometry, new TankSurrounds(air, tank.LossWPerK.Value, 0, 0, 0, 1, 0), StepS);
            LayeredTank.Mix(layers);
            if (layers[layer] < limitCelsius)
            {
                return inS + (StepS * (before - limitCelsius) / (before - layers[layer]));
            }
        }

        return null;
    }
}
