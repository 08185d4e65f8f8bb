namespace OnboardHeat.Simulation;

/// <summary>
/// Something that happens in a plan: daily life, a failure, an innocent disturbance, or trouble with a probe or a
/// signal.
/// </summary>
public enum HappeningKind
{
    /// <summary>Doors stand open (length).</summary>
    DoorsOpen,

    /// <summary>Cab heater on (length; size: fan 0 to 1).</summary>
    CabHeater,

    /// <summary>The living space is heated by its own heater (length; size: degrees Celsius to keep).</summary>
    SpaceHeating,

    /// <summary>Somebody showers or washes up (length; size: mixed water, litres a minute).</summary>
    Draw,

    /// <summary>Electric element switched on (length).</summary>
    Element,

    /// <summary>Isolation valves closed (length).</summary>
    ValvesClosed,

    /// <summary>The flow hose comes off at the tank.</summary>
    TankFlowHoseOff,

    /// <summary>The return hose comes off at the tank.</summary>
    TankReturnHoseOff,

    /// <summary>The flow hose comes off at the engine: the line behind just stops.</summary>
    EngineFlowHoseOff,

    /// <summary>The return hose comes off at the engine: all flows on until the coolant is gone.</summary>
    EngineReturnHoseOff,

    /// <summary>A hose splits at the tank (size: share of the flow that gets out, 0 to 1).</summary>
    HoseSplit,

    /// <summary>A slow loss at the tank (size: litres a minute).</summary>
    Weep,

    /// <summary>Air in the coil (length; size: share of the flow left).</summary>
    AirLock,

    /// <summary>The pump's belt slips (length; size: share of the flow left).</summary>
    PumpSlips,

    /// <summary>The thermostat is stuck open (size: opening, 0 to 1).</summary>
    ThermostatStuck,

    /// <summary>A ford: cold water over the hoses (length).</summary>
    Ford,

    /// <summary>Cold coolant is poured in (size: litres).</summary>
    ColdTopUp,

    /// <summary>Domestic water in the tray (size: litres; warm if the tank is).</summary>
    WaterInTray,

    /// <summary>The driver pulls over and leaves the engine off.</summary>
    PullsOver,

    /// <summary>A probe gives nothing (length).</summary>
    ProbeMissing,

    /// <summary>A probe's checksum fails (length).</summary>
    ProbeBadCrc,

    /// <summary>A probe shows 85 °C as after losing its supply (length).</summary>
    ProbePowerOn,

    /// <summary>A probe's bytes are all zero: 0 °C with a checksum that fits (length).</summary>
    ProbeAllZero,

    /// <summary>A probe repeats its last value (length).</summary>
    ProbeStuck,

    /// <summary>A probe jumps (length; size: kelvin).</summary>
    ProbeJump,

    /// <summary>A probe slips off what it should touch (size: share of the contact left).</summary>
    ProbeLoose,

    /// <summary>Two probes are exchanged: top with bottom, flow with return.</summary>
    ProbesSwapped,

    /// <summary>The engine signal stays as given (length; size: 0 or 1).</summary>
    EngineSignalStuck,

    /// <summary>The engine signal bounces (length).</summary>
    EngineSignalBounces,

    /// <summary>
    /// Works on the circuit: a hose is taken off at the tank, and after the length put on again and the circuit filled
    /// up with cold coolant (size: litres that ran out of the engine meanwhile).
    /// </summary>
    HosesTakenOff,
}
