namespace OnboardHeat.Engine.Recordings;

/// <summary>What a column of a recording holds.</summary>
internal enum RecordingColumnKind
{
    /// <summary>Wall-clock time.</summary>
    Time,

    /// <summary>Number of the run.</summary>
    Run,

    /// <summary>Seconds since the run began.</summary>
    Elapsed,

    /// <summary>What a person did.</summary>
    Action,

    /// <summary>How the daemon itself fared.</summary>
    House,

    /// <summary>A temperature.</summary>
    Channel,

    /// <summary>An on-off contact.</summary>
    Signal,
}
