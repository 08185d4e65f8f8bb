using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Judging;

/// <summary>
/// The time of one run: elapsed from the monotonic clock, and the wall clock as a label that may or may not be right.
/// </summary>
public sealed class RunClock(int run, TimeProvider time, IUtcTrust trust)
{
    private readonly long _began = time.GetTimestamp();
    private bool _isTrusted;

    /// <summary>Number of the run, 1 or more; one more with each start.</summary>
    public int Run { get; } = run;

    /// <summary>Monotonic time since the run began. Steps of the wall clock do not touch it.</summary>
    public TimeSpan Elapsed => Whole(time.GetElapsedTime(_began));

    /// <summary>The wall clock.</summary>
    public DateTimeOffset Utc => DateTimeOffset.UnixEpoch + Whole(time.GetUtcNow() - DateTimeOffset.UnixEpoch);

    /// <summary>Whether the wall clock is known to be right; once it is, it stays so for the run.</summary>
    public bool IsUtcTrusted => _isTrusted = _isTrusted || trust.IsTrusted;

    // The record stores exactly what was judged, and whole milliseconds keep it small.
    private static TimeSpan Whole(TimeSpan span) =>
        TimeSpan.FromTicks(span.Ticks - (span.Ticks % TimeSpan.TicksPerMillisecond));
}
