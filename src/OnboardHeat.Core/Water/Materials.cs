namespace OnboardHeat.Core.Water;

/// <summary>Constants of the materials that hold the water.</summary>
internal static class Materials
{
    /// <summary>
    /// Specific heat of stainless steel 1.4301 (304), joules per kilogram and kelvin, 0-100 °C (a public materials
    /// table).
    /// </summary>
    public const double SteelJPerKgK = 500;
}
