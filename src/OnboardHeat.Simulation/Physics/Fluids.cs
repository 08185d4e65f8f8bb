namespace OnboardHeat.Simulation.Physics;

/// <summary>
/// Heat content of water and coolant per litre, in forms that can be inverted exactly, so that the energy balance
/// closes to rounding.
/// </summary>
internal static class Fluids
{
    /// <summary>
    /// Volumetric heat of water, J/(L K): 4210 - 1.62 t. Fits density times specific heat of IAPWS SR6-08 (10 °C
    /// 4193.9, 40 °C 4146.8, 60 °C 4114.6, 80 °C 4078.5) within 0.2 % from 0 to 95 °C.
    /// </summary>
    public const double WaterAtZeroJPerLitreK = 4210, WaterSlopeJPerLitreK2 = 1.62;

    /// <summary>
    /// Volumetric heat of coolant, J/(L K): ethylene glycol and water, half and half by mass, 3676 at 80 °C (Melinder
    /// 2010). Taken as constant: it changes by 2 % between 40 and 100 °C.
    /// </summary>
    public const double CoolantJPerLitreK = 3676;

    /// <summary>Specific heat of stainless steel 1.4301, J/(kg K) (a public materials table).</summary>
    public const double SteelJPerKgK = 500;

    /// <summary>
    /// Heat to warm a litre of space kept full of water from 0 °C to <paramref name="celsius"/>, J/L.
    /// </summary>
    public static double WaterJPerLitre(double celsius) =>
        celsius * (WaterAtZeroJPerLitreK - (WaterSlopeJPerLitreK2 / 2 * celsius));
}
