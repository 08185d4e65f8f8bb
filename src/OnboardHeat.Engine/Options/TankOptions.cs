namespace OnboardHeat.Engine.Options;

/// <summary>The hot-water tank. Ranges and units are those of <see cref="Core.Tank.TankDescription"/>.</summary>
public sealed class TankOptions
{
    /// <summary>
    /// Water content in litres, 1 to 500; default 24. <c>run</c> wants it stated: every figure scales with it.
    /// </summary>
    public double VolumeLitres { get; set; } = 24;

    /// <summary>
    /// Temperature of the cold water that enters, degrees Celsius, 0 to 40; default 12. Stored heat counts from here,
    /// so that the figure does not move with a probe in the sun.
    /// </summary>
    public double ColdSupplyCelsius { get; set; } = 12;

    /// <summary>
    /// Mass of the empty steel vessel in kilograms, 0 to 200; left out: 2 kg + 0.14 kg per litre and wider ranges.
    /// The name plate says it.
    /// </summary>
    public double? VesselMassKg { get; set; }

    /// <summary>
    /// Temperature at which the relief valve opens, degrees Celsius, 50 to 120; default 90. Must lie at least 5 K
    /// above <c>Shower:UsableTopCelsius</c> and the mix: the alarm 2 K below it would else stand in normal use.
    /// </summary>
    public double ReliefCelsius { get; set; } = 90;
}
