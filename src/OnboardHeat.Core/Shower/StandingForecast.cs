using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>
/// What becomes of the tank if it stands untouched from now: the mean layers cool under the air that the days so far
/// promise.
/// </summary>
internal static class StandingForecast
{
    /// <summary>
    /// Longest step, s: a small tank falls less than a kelvin in it, the air's daily wave hardly bends, and the
    /// crossing is interpolated.
    /// </summary>
    private const double StepS = 1800;

    /// <summary>How far a forecast looks, s.</summary>
    public const double HorizonS = 7 * 86400;

    /// <summary>Seconds until the top falls below a temperature; null when it does not within seven days.</summary>
    public static double? TopBelowInS(
        ReadOnlySpan<double> layers, TankEstimator estimator, double elapsedS, double limitCelsius) =>
        FallsBelowInS(layers, estimator, elapsedS, limitCelsius, TankGeometry.Layers - 1);

    /// <summary>
    /// Seconds until the coldest layer falls below a temperature; null when it does not within seven days.
    /// </summary>
    public static double? BottomBelowInS(
        ReadOnlySpan<double> layers, TankEstimator estimator, double elapsedS, double limitCelsius) =>
        FallsBelowInS(layers, estimator, elapsedS, limitCelsius, 0);

    private static double? FallsBelowInS(
        ReadOnlySpan<double> layersNow, TankEstimator estimator, double elapsedS, double limitCelsius, int layer)
    {
        var air = estimator.AirAhead();
        if (layersNow[layer] < limitCelsius)
        {
            return 0;
        }

        // Layers lie bottom first, the coldest lowest, and what stands never gets colder than the coldest of it and the
        // air.
        if (Math.Min(layersNow[0], air.LowestCelsius) >= limitCelsius)
        {
            return null;
        }

        Span<double> layers = stackalloc double[TankGeometry.Layers];
        layersNow.CopyTo(layers);
        var around = new TankSurrounds(0, estimator.Current.LossWPerK.Value, 0, 0, 0, 1, 0);
        var course = new SteadyCourse(estimator.Geometry, around, StepS);
        for (var inS = 0.0; inS < HorizonS; inS += course.StepS)
        {
            var before = layers[layer];
            course.Step(layers, air.At(elapsedS + inS + (course.StepS / 2)));
            if (layers[layer] < limitCelsius)
            {
                return inS + (course.StepS * (before - limitCelsius) / (before - layers[layer]));
            }
        }

        return null;
    }
}
