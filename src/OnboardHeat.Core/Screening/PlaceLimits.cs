namespace OnboardHeat.Core.Screening;

/// <summary>
/// What a place in the van can do: the range of its temperature, and how fast a probe there can follow.
/// </summary>
/// <param name="LowestCelsius">Nothing below this can be read here, degrees Celsius.</param>
/// <param name="HighestCelsius">Nothing above this can be read here, degrees Celsius.</param>
/// <param name="RiseK">Largest sudden difference that can drive the probe upwards, kelvin.</param>
/// <param name="FallK">Largest sudden difference that can drive it downwards, kelvin.</param>
/// <param name="LagS">Shortest lag of a probe fitted here, seconds.</param>
/// <param name="StaleS">After so many seconds without a reading the last one says nothing.</param>
internal readonly record struct PlaceLimits(
    double LowestCelsius, double HighestCelsius, double RiseK, double FallK, double LagS, double StaleS)
{
    /// <summary>
    /// The largest honest change within a time: a first-order probe after a sudden change of all that can drive it.
    /// </summary>
    public double StepLimitK(double stepK, double overS)
    {
        var drivingK = stepK > 0 ? RiseK : FallK;
        return ScreeningPolicy.StepSlackK + (drivingK * (1 - Math.Exp(-overS / LagS)));
    }
}
