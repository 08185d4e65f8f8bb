namespace OnboardHeat.Core.Watch;

/// <summary>Everything that the daemon warns of.</summary>
public enum AlarmKind
{
    /// <summary>Coolant is leaving the circuit: a hose is off or split.</summary>
    CoolantLoss,

    /// <summary>The tank nears the temperature at which its relief valve opens.</summary>
    TankOverTemperature,

    /// <summary>The coolant is above its limit.</summary>
    CoolantOverTemperature,

    /// <summary>The electric element is on while the tank is drained.</summary>
    ElementDry,

    /// <summary>Engine running and warm, and no coolant passes the coil.</summary>
    CirculationStopped,

    /// <summary>A slow loss of coolant.</summary>
    CoolantWeep,

    /// <summary>A wet or warm tray that is not coolant.</summary>
    WaterInTray,

    /// <summary>A fitted part is hotter than its own rating.</summary>
    RatingExceeded,

    /// <summary>Water in tank or pipes is near freezing.</summary>
    Frost,

    /// <summary>A probe is gone, stuck, implausible, loose or exchanged.</summary>
    ProbeFault,

    /// <summary>A watcher lacks the readings it needs.</summary>
    CannotJudge,

    /// <summary>Part of the record is damaged and was set aside.</summary>
    HistoryDamaged,

    /// <summary>Recording has stopped.</summary>
    HistoryStopped,

    /// <summary>The supply dips.</summary>
    PowerLow,

    /// <summary>Works mode was left on with the engine running.</summary>
    WorksOpen,

    /// <summary>A fitted part is on course for its rating.</summary>
    RatingNear,

    /// <summary>Water at the tap can scald.</summary>
    ScaldRisk,

    /// <summary>Heat is leaving the tank through the coolant circuit, or the tank is warm enough.</summary>
    CloseValves,

    /// <summary>Long in the growth range since it was last hot.</summary>
    HygieneDue,

    /// <summary>The coil gives less than this van's own normal.</summary>
    WeakHeating,

    /// <summary>Lamp and buzzer were not tested for a month.</summary>
    TestDue,
}
