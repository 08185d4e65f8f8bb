namespace OnboardHeat.Core.Water;

/// <summary>Liquid water at atmospheric pressure, 0 to 100 °C.</summary>
public static class WaterProperties
{
    /// <summary>
    /// Density in kilograms per litre. Kell 1975, J. Chem. Eng. Data 20:97, equation 16; within 0.02 kg/m3 of IAPWS-95 from 4 to 99.9 °C.
    /// </summary>
    public static double DensityKgPerLitre(double celsius)
    {
        var t = celsius;
        var numerator = 999.83952 + (t * (16.945176 + (t * (-7.9870401e-3 + (t * (-46.170461e-6 + (t * (105.56302e-9 - (t * 280.54253e-12)))))))));
        return numerator / (1 + (16.879850e-3 * t)) / 1000;
    }

    /// <summary>
    /// Specific enthalpy above 0 °C in joules per kilogram: a fifth-order fit to SR6-08(2011) of IAPWS, within 60 J/kg from 4 to 99.9 °C.
    /// </summary>
    public static double EnthalpyJPerKg(double celsius) => celsius * 4186;

    /// <summary>
    /// Heat in a volume of water above a reference, joules. The volume stays full: mass follows the density at its own temperature.
    /// </summary>
    public static double HeatJ(double litres, double celsius, double aboveCelsius) =>
        litres * DensityKgPerLitre(celsius) * (EnthalpyJPerKg(celsius) - EnthalpyJPerKg(aboveCelsius));
}
