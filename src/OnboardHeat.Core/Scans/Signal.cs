namespace OnboardHeat.Core.Scans;

/// <summary>An on-off contact in the van. Any subset may be fitted.</summary>
public enum Signal
{
    /// <summary>1 while the engine runs.</summary>
    EngineRunning,

    /// <summary>1 while the tray's contact is wet.</summary>
    TrayWet,

    /// <summary>1 while the coolant level switch reports low.</summary>
    CoolantLow,

    /// <summary>1 while the isolation valves to the coil are closed.</summary>
    ValvesClosed,

    /// <summary>1 while the electric element heats.</summary>
    ElementOn,
}
