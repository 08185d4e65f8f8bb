namespace OnboardHeat.Engine.Imports;

/// <summary>How a logger wrote its times.</summary>
internal enum ForeignTimeKind
{
    /// <summary>Date and time without an offset.</summary>
    Local,

    /// <summary>Date and time with an offset from UTC.</summary>
    WithOffset,

    /// <summary>Seconds since 1970 in UTC (POSIX).</summary>
    UnixSeconds,

    /// <summary>Milliseconds since 1970 in UTC.</summary>
    UnixMilliseconds,

    /// <summary>Seconds since the recording began.</summary>
    Elapsed,
}
