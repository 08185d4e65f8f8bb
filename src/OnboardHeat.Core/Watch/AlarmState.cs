namespace OnboardHeat.Core.Watch;

/// <summary>
/// State of an alarm as a person sees it. After the state model of ISA-18.2 / IEC 62682, openly stated in OPC 10000-9.
/// </summary>
public enum AlarmState
{
    /// <summary>Nothing to report.</summary>
    Normal,

    /// <summary>Raised, and nobody has said that they saw it.</summary>
    Unacknowledged,

    /// <summary>Raised and seen.</summary>
    Acknowledged,

    /// <summary>Gone again before anybody saw it.</summary>
    ReturnedUnacknowledged,

    /// <summary>Gone and seen, but held until it is reset (or, for latched kinds, until both are so).</summary>
    Latched,

    /// <summary>Put aside by a person for a stated time.</summary>
    Shelved,

    /// <summary>Not judged, because works are under way.</summary>
    OutOfService,
}
