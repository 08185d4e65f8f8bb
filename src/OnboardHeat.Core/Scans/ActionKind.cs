namespace OnboardHeat.Core.Scans;

/// <summary>What a person says or does. It comes with the scan, so that a replay sees it too.</summary>
public enum ActionKind
{
    /// <summary>Acknowledges an alarm (or all of them): silences, never clears.</summary>
    Acknowledge,

    /// <summary>Puts a warning or an advice aside for a time.</summary>
    Shelve,

    /// <summary>Work on the circuit begins: its watchers go out of service.</summary>
    WorksBegin,

    /// <summary>Work on the circuit has ended.</summary>
    WorksEnd,

    /// <summary>The tank was drained.</summary>
    Drained,

    /// <summary>The tank was filled.</summary>
    Filled,

    /// <summary>What was broken is repaired: a latched coolant loss may return to normal.</summary>
    Repaired,

    /// <summary>A change mark: hoses, insulation, coil, probe or coolant.</summary>
    Changed,

    /// <summary>Free text for the record.</summary>
    Note,

    /// <summary>Lamp and buzzer are tested, by somebody who looks and listens.</summary>
    Test,
}
