using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Water;

/// <summary>
/// Mixing hot and cold water to a third temperature, by heat balance with one specific heat: against enthalpies the hot
/// share is off by less than 0.04 % of itself.
/// </summary>
internal static class MixedWater
{
    /// <summary>
    /// Share of hot water in the mix, 0 to 1. Where the hot side cannot reach the mix it is 1 (all hot); where the cold
    /// side is already as warm as the mix it is 0: no division by nothing, however warm the cold supply of a summer
    /// tank.
    /// </summary>
    /// <param name="hot">Hot side.</param>
    /// <param name="cold">Cold side.</param>
    /// <param name="mixed">Wanted mix.</param>
    public static double HotShare(Celsius hot, Celsius cold, Celsius mixed)
    {
        if (hot <= mixed)
        {
            return 1;
        }

        return cold >= mixed ? 0 : (mixed - cold) / (hot - cold);
    }

    /// <summary>
    /// Litres at the hot temperature that carry as much usable heat as so many at 60 °C over a 10 °C supply: the
    /// conversion of SIA 385/2. Null where the hot side is no warmer than the cold.
    /// </summary>
    /// <param name="standardLitres">Litres at 60 °C, supply at 10 °C.</param>
    /// <param name="hotCelsius">The temperature they are wanted at, degrees Celsius.</param>
    /// <param name="coldCelsius">The supply, degrees Celsius.</param>
    public static double? EquivalentLitres(double standardLitres, double hotCelsius, double coldCelsius) =>
        hotCelsius > coldCelsius ? standardLitres * (60 - 10) / (hotCelsius - coldCelsius) : null;
}
