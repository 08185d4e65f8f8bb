using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tank;

/// <summary>The hot-water tank as its owner describes it.</summary>
public sealed record TankDescription
{
    /// <summary>
    /// Mass of a small steel vessel without its water: <c>2 kg + 0.14 kg per litre</c> (common practice, no source).
    /// </summary>
    public const double VesselBaseKg = 2, VesselKgPerLitre = 0.14;

    /// <summary>Water content in litres, 1 to 500; default 24.</summary>
    public double VolumeLitres { get; init; } = 24;

    /// <summary>
    /// Temperature of the cold water that enters and from which stored heat counts, degrees Celsius, 0 to 40; default
    /// 12.
    /// </summary>
    public double ColdSupplyCelsius { get; init; } = 12;

    /// <summary>
    /// Mass of the steel vessel in kilograms, 0 to 200; null: not known, the default rule and a wider range.
    /// </summary>
    public double? VesselMassKg { get; init; }

    /// <summary>Temperature at which the relief valve opens, degrees Celsius, 50 to 120; default 90.</summary>
    public double ReliefCelsius { get; init; } = 90;

    /// <summary>The stated mass, or that of the default rule, in kilograms.</summary>
    public double EffectiveVesselMassKg => VesselMassKg ?? (VesselBaseKg + (VesselKgPerLitre * VolumeLitres));

    /// <summary>
    /// Heat of water and vessel for each kelvin, joules per kelvin: water at the density and heat capacity that it has
    /// about 50 °C (IAPWS SR6-08: 988 kg/m3 and 4181 J/(kg K) there); within 2 % of that from 10 to 80 °C.
    /// </summary>
    public double HeatJPerK => (VolumeLitres * 4_150) + (EffectiveVesselMassKg * Materials.SteelJPerKgK);
}
