namespace OnboardHeat.Core.Tank;

/// <summary>
/// Facts of time and temperature that bear on hygiene, since this run began. Facts, no verdict: whether water is fit to
/// use they do not say.
/// </summary>
/// <param name="InGrowthRangeS">
/// Seconds that water anywhere in the tank was between 20 and 45 °C since the whole of it was last above 60 °C (range:
/// Schulze-Roebbecke 1987 gives multiplication from 20 to 43 °C, other sources to 45 °C).
/// </param>
/// <param name="SinceHotS">Seconds since the whole tank was last above 60 °C; null: not in this run.</param>
/// <param name="HotForS">How long it was then, in one piece, seconds.</param>
public readonly record struct HygieneFacts(double InGrowthRangeS, double? SinceHotS, double HotForS)
{
    /// <summary>
    /// Bounds of the growth range and the store temperature, °C (HSG274 part 2: stores at 60 °C or more).
    /// </summary>
    public const double GrowthFromCelsius = 20, GrowthToCelsius = 45, HotCelsius = 60;

    /// <summary>The facts after so many more seconds with the tank between these temperatures, °C.</summary>
    public HygieneFacts After(double stepS, double coldestCelsius, double hottestCelsius)
    {
        if (coldestCelsius >= HotCelsius)
        {
            return new HygieneFacts(0, 0, SinceHotS == 0 ? HotForS + stepS : stepS);
        }

        var grows = coldestCelsius < GrowthToCelsius && hottestCelsius > GrowthFromCelsius;
        return this with { InGrowthRangeS = InGrowthRangeS + (grows ? stepS : 0), SinceHotS = SinceHotS + stepS };
    }
}
