namespace OnboardHeat.Core.Scans;

/// <summary>A place in the van where a temperature is measured, in degrees Celsius. Any subset may be fitted.</summary>
public enum Channel
{
    /// <summary>Wall or pocket at the top of the tank.</summary>
    TankTop,

    /// <summary>Half way up the tank.</summary>
    TankMiddle,

    /// <summary>Bottom of the tank.</summary>
    TankBottom,

    /// <summary>Coolant on its way to the coil.</summary>
    Flow,

    /// <summary>Coolant on its way back from the coil.</summary>
    Return,

    /// <summary>Air by the tank.</summary>
    Surroundings,

    /// <summary>Floor or drip tray under the tank.</summary>
    Tray,

    /// <summary>Hot draw-off pipe.</summary>
    Outlet,

    /// <summary>Cold water supply.</summary>
    ColdSupply,

    /// <summary>Coolant at the engine, from the vehicle's own sensor.</summary>
    EngineCoolant,
}
