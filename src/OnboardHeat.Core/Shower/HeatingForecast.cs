using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>What becomes of the tank if heating goes on as now.</summary>
internal static class HeatingForecast
{
    /// <summary>
    /// Longest step, s: a low coil heats its layers before they mix, so that longer steps heat too slowly (1 % less in
    /// a minute's steps).
    /// </summary>
    private const double StepS = 60;

    /// <summary>How far it looks, s: nobody plans a shower by a longer drive.</summary>
    private const double HorizonS = 4 * 3600;

    /// <summary>
    /// Time between two looks at the minutes of shower, s: between them the minutes are taken to grow evenly.
    /// </summary>
    private const double LookEachS = 360;

    /// <summary>Seconds until a useful shower is there, and the highest mean that the heating gets to, °C.</summary>
    public static (double? ReadyInS, double PeakCelsius) Follow(
        ReadOnlySpan<double> layersNow, TankGeometry tank, VanDescription van, in TankSurrounds around)
    {
        Span<double> layers = stackalloc double[TankGeometry.Layers];
        Span<double> before = stackalloc double[TankGeometry.Layers];
        layersNow.CopyTo(layers);
        layersNow.CopyTo(before);
        var course = new SteadyCourse(tank, around, StepS);
        var lookEvery = (int)Math.Ceiling(LookEachS / course.StepS);
        double? readyInS = null;
        var peak = LayeredTank.Mean(layers);
        for (var step = 1; step * course.StepS <= HorizonS; step++)
        {
            course.Step(layers, around.AirCelsius);
            peak = Math.Max(peak, LayeredTank.Mean(layers));
            if (readyInS is null && step % lookEvery == 0)
            {
                if (ShareOfLook(before, layers, tank, van) is { } share)
                {
                    readyInS = course.StepS * (step - lookEvery + (lookEvery * share));
                }

                layers.CopyTo(before);
            }
        }

        return (readyInS, peak);
    }

    /// <summary>
    /// How far on the way from the last look to this one a useful shower was there, 0 to 1; null when it is not yet.
    /// </summary>
    private static double? ShareOfLook(
        ReadOnlySpan<double> before, ReadOnlySpan<double> now, TankGeometry tank, VanDescription van)
    {
        var enough = van.Shower.UsefulMinutes;
        var cold = van.Tank.ColdSupplyCelsius;
        if (LayeredShower.MostMinutes(now, tank, van.Shower, cold) < enough)
        {
            return null;
        }

        Span<double> drawn = stackalloc double[TankGeometry.Layers];
        now.CopyTo(drawn);
        var minutes = LayeredShower.Minutes(drawn, tank, van.Shower, cold);
        if (minutes < enough)
        {
            return null;
        }

        before.CopyTo(drawn);
        var minutesBefore = LayeredShower.Minutes(drawn, tank, van.Shower, cold);
        return minutesBefore < enough ? (enough - minutesBefore) / (minutes - minutesBefore) : 0;
    }
}
