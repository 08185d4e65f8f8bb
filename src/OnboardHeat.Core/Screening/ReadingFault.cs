namespace OnboardHeat.Core.Screening;

/// <summary>Why a reading is not to be believed. A named value, never an exception and never NaN.</summary>
public enum ReadingFault
{
    /// <summary>Nothing is wrong with it.</summary>
    None,

    /// <summary>No reading came: probe unplugged, bus down, empty cell, read timed out.</summary>
    Missing,

    /// <summary>The checksum over the probe's bytes did not match.</summary>
    BadCrc,

    /// <summary>85 °C as a probe reports after losing its supply, before it has measured.</summary>
    PowerOn,

    /// <summary>Every byte zero: the bus is held low (0 °C with a checksum that fits).</summary>
    AllZero,

    /// <summary>Outside what the probe or the place can be.</summary>
    OutOfRange,

    /// <summary>Unchanged to the last step while its neighbours moved.</summary>
    Stuck,

    /// <summary>A jump faster than the place can change.</summary>
    ImplausibleStep,

    /// <summary>An old value repeated, or none for so long that the last one says nothing.</summary>
    Stale,

    /// <summary>The probe has come off what it should touch: it follows the air, not the metal.</summary>
    Loose,

    /// <summary>It behaves as the probe of another place does: two probes are exchanged.</summary>
    Swapped,
}
