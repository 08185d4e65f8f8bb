namespace OnboardHeat.Core.Tank;

/// <summary>The rows of the ensemble: what each member believes. Layers come first, bottom first, then these.</summary>
internal static class Row
{
    /// <summary>Layer temperatures, °C: rows 0 to 11.</summary>
    public const int Layer = 0;

    /// <summary>What the top, middle and bottom probe's metal is at, behind the water by its lag, °C.</summary>
    public const int Probe = TankGeometry.Layers;

    /// <summary>What each of the three probes shows too much beyond what all do, K.</summary>
    public const int Offset = Probe + 3;

    /// <summary>
    /// What all tank probes show too much, K. No reading of theirs can tell it, so none may teach it.
    /// </summary>
    public const int CommonOffset = Offset + 3;

    /// <summary>Lag of the three probes, s.</summary>
    public const int Lag = CommonOffset + 1;

    /// <summary>Loss to the surroundings, W/K.</summary>
    public const int Loss = Lag + 3;

    /// <summary>Conductance of the coil, W/K.</summary>
    public const int Coil = Loss + 1;

    /// <summary>Where the coil begins, in layers from the bottom.</summary>
    public const int CoilFoot = Coil + 1;

    /// <summary>How far the coil reaches up, in layers from the bottom.</summary>
    public const int CoilReach = CoilFoot + 1;

    /// <summary>
    /// True excess of the coolant over the air for each kelvin that its probes show: they sit on the hose.
    /// </summary>
    public const int CoolantGain = CoilReach + 1;

    /// <summary>What the air probe shows too little, K; without one, the air itself less the stand-in.</summary>
    public const int AirOffset = CoolantGain + 1;

    /// <summary>Power of the electric element, W.</summary>
    public const int Element = AirOffset + 1;

    /// <summary>Water being drawn, layers a second.</summary>
    public const int Draw = Element + 1;

    /// <summary>What coolant that turns by its own buoyancy carries for each kelvin, W/K.</summary>
    public const int Circulation = Draw + 1;

    /// <summary>Number of rows.</summary>
    public const int Count = Circulation + 1;
}
