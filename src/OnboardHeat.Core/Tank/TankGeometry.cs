using OnboardHeat.Core.Water;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// The tank as twelve layers of equal volume, bottom first: how much heat each holds per kelvin, how much passes
/// between neighbours and how the loss to the surroundings is shared out.
/// </summary>
internal sealed class TankGeometry
{
    /// <summary>
    /// Number of layers. In a draw the cold water's front smears by about a third of its way, as in twelve well-mixed
    /// vessels in series; more layers would claim a sharper front than a 20-litre tank with a coil and fittings keeps
    /// (common practice, no source).
    /// </summary>
    public const int Layers = 12;

    /// <summary>
    /// Lowest layers that entering cold water stirs into one: its jet reaches about a sixth of the height (common
    /// practice, no source).
    /// </summary>
    public const int StirredLayers = 2;

    /// <summary>
    /// What the front smears less than by as many well-mixed vessels: water moves up partly as a plug (a tenth or so,
    /// common practice, no source; the shower tests bound it by plug and vessels).
    /// </summary>
    public const double Unsmeared = 0.12;

    /// <summary>
    /// Share of the loss that each end has beyond its layer's equal share: top and bottom plates of an upright cylinder
    /// about twice as high as wide are a tenth of its surface each, and are lagged somewhat better than the wall
    /// (derived; lagging: common practice).
    /// </summary>
    public const double EndLossShare = 0.055;

    /// <summary>
    /// Conductance between neighbouring layers of a 25-litre tank, W/K: water 0.6 W/(m K) over 0.05 m2 and 42 mm (0.7),
    /// and the steel wall (0.1 to 0.3, thin). It grows with the height of similar tanks, the cube root of volume.
    /// </summary>
    private const double ConductionAt25LitresWPerK = 0.8;

    /// <summary>
    /// Temperature at which the heat capacity of the water is taken, °C: the middle of what a tank is used at (error
    /// under 0.6 %).
    /// </summary>
    private const double CapacityAtCelsius = 55;

    /// <summary>Geometry of a tank with so much water and steel.</summary>
    public TankGeometry(TankDescription tank)
    {
        LayerLitres = tank.VolumeLitres / Layers;
        var waterJPerLitreK = 1000 * WaterProperties.DensityKgPerLitre(CapacityAtCelsius)
            * WaterProperties.SpecificHeatJPerKgK(CapacityAtCelsius) / 1000;
        LayerJPerK = (LayerLitres * waterJPerLitreK) + (tank.EffectiveVesselMassKg * Materials.SteelJPerKgK / Layers);
        ConductionWPerK = ConductionAt25LitresWPerK * Math.Cbrt(tank.VolumeLitres / 25);
    }

    /// <summary>Water in one layer, litres.</summary>
    public double LayerLitres { get; }

    /// <summary>Heat that one layer with its part of the vessel takes per kelvin, joules.</summary>
    public double LayerJPerK { get; }

    /// <summary>Heat that passes between neighbours, watts per kelvin.</summary>
    public double ConductionWPerK { get; }

    /// <summary>Heat capacity of all of it, joules per kelvin.</summary>
    public double TotalJPerK => Layers * LayerJPerK;

    /// <summary>Share of the whole loss that a layer has; the shares sum to one.</summary>
    public static double LossShare(int layer)
    {
        var equal = (1 - (2 * EndLossShare)) / Layers;
        return layer is 0 or Layers - 1 ? equal + EndLossShare : equal;
    }

    /// <summary>
    /// Share of the coil in a layer when it stands between two heights, in layers from the bottom; the shares sum to
    /// one.
    /// </summary>
    public static double CoilShare(int layer, double foot, double reach) =>
        Math.Max(0, Math.Min(reach, layer + 1) - Math.Max(foot, layer)) / (reach - foot);
}
