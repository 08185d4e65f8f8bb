namespace OnboardHeat.Core.Water;

/// <summary>
/// Ethylene glycol in water, the usual coolant: density and specific heat by the polynomials of Melinder 2010
/// (International Institute of Refrigeration) in temperature and mass fraction. Makers' tables differ from them by up
/// to 1.5 % in density; by volume 50 % is 52.7 % by mass.
/// </summary>
internal static class GlycolWater
{
    /// <summary>Largest mass fraction of glycol that the polynomials hold for.</summary>
    public const double HighestMassFraction = 0.6;

    private const double BaseCelsius = 304.878 - 273.15;
    private const double BaseMassFraction = 0.308462;

    private static readonly double[][] s_density =
    [
        [1034, 131.1, 0.749, -106.2, -96.23, 489.1],
        [-0.4781, -0.6876, 0.7855, 1.229, -7.211],
        [-2.692e-3, 4.805e-3, -3.995e-3, -1.153e-2],
        [4.725e-6, 1.69e-6, 4.982e-5],
    ];

    private static readonly double[][] s_specificHeat =
    [
        [3737, -1799, -993.3, 2610, 1537, -16180],
        [2.93, 10.46, 3.516, -1.189, -42.72],
        [-4.675e-3, -4.147e-2, 5.109e-2, -0.1643],
        [-1.389e-5, 1.847e-5, -7.138e-4],
    ];

    /// <summary>Density, kilograms per litre.</summary>
    /// <param name="celsius">Temperature, -30 to 100 °C; outside, the nearer end is taken.</param>
    /// <param name="massFraction">
    /// Kilograms of glycol in a kilogram of coolant, 0 to 0.6; outside, the nearer end is taken.
    /// </param>
    public static double DensityKgPerLitre(double celsius, double massFraction) =>
        Evaluate(s_density, celsius, massFraction) / 1000;

    /// <summary>Specific heat, joules per kilogram and kelvin; the same ranges as the density.</summary>
    public static double SpecificHeatJPerKgK(double celsius, double massFraction) =>
        Evaluate(s_specificHeat, celsius, massFraction);

    /// <summary>Heat that a litre carries per kelvin, joules; the same ranges as the density.</summary>
    public static double HeatCapacityJPerLitreK(double celsius, double massFraction) =>
        DensityKgPerLitre(celsius, massFraction) * SpecificHeatJPerKgK(celsius, massFraction);

    private static double Evaluate(double[][] coefficients, double celsius, double massFraction)
    {
        var t = Math.Clamp(celsius, -30, 100) - BaseCelsius;
        var x = Math.Clamp(massFraction, 0, HighestMassFraction) - BaseMassFraction;
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            var row = 0.0;
            for (var j = coefficients[i].Length - 1; j >= 0; j--)
            {
                row = (row * x) + coefficients[i][j];
            }

            sum = (sum * t) + row;
        }

        return sum;
    }
}
