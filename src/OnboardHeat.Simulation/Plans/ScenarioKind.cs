namespace OnboardHeat.Simulation;

/// <summary>Kinds of drives and nights that can be made from a seed.</summary>
internal enum ScenarioKind
{
    /// <summary>An ordinary drive.</summary>
    Ordinary,

    /// <summary>The flow hose comes off at the tank.</summary>
    TankFlowHose,

    /// <summary>The return hose comes off at the tank.</summary>
    TankReturnHose,

    /// <summary>A hose comes off at the engine.</summary>
    EngineHose,

    /// <summary>A hose splits at the tank.</summary>
    SplitHose,

    /// <summary>A slow loss.</summary>
    Weep,

    /// <summary>Somebody closes the isolation valves, engine running.</summary>
    ValvesClosed,

    /// <summary>Air collects in the coil.</summary>
    AirLock,

    /// <summary>The pump's belt slips for a while.</summary>
    PumpSlips,

    /// <summary>The thermostat sticks open.</summary>
    ThermostatStuck,

    /// <summary>Somebody showers on the move.</summary>
    ShowerOnTheMove,

    /// <summary>Water splashes over the hoses in a ford.</summary>
    Ford,

    /// <summary>Cold coolant is poured in.</summary>
    ColdTopUp,

    /// <summary>Domestic water gets into the tray.</summary>
    WaterInTray,

    /// <summary>A line probe slips off its pipe.</summary>
    ProbeOffPipe,

    /// <summary>Probes glitch now and then.</summary>
    Glitches,

    /// <summary>Two probes are exchanged from the start.</summary>
    ProbesSwapped,

    /// <summary>The engine signal bounces or sticks.</summary>
    SignalTrouble,

    /// <summary>A night, or two, parked with closed valves.</summary>
    Night,

    /// <summary>The same with draws.</summary>
    NightWithDraws,

    /// <summary>Parked with the valves left open.</summary>
    NightValvesOpen,

    /// <summary>Parked with the electric element on for some hours.</summary>
    NightWithElement,
}
