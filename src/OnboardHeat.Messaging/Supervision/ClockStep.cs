namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// Notices that the wall clock was set: it then moved by other than the monotonic one did. The library times its
/// keep-alive by the wall clock, so after a step it drops a healthy connection or never looks after a dead one.
/// </summary>
internal sealed class ClockStep(TimeProvider time)
{
    /// <summary>
    /// Slewing and rounding stay far below this; a step that matters to a keep-alive of 30 s lies above.
    /// </summary>
    public static readonly TimeSpan Least = TimeSpan.FromSeconds(5);

    private readonly long _start = time.GetTimestamp();
    private TimeSpan _offset = time.GetUtcNow() - DateTimeOffset.UnixEpoch;

    /// <summary>By how much the wall clock was set since the last look; zero when it was not.</summary>
    public TimeSpan Look()
    {
        var offset = time.GetUtcNow() - DateTimeOffset.UnixEpoch - time.GetElapsedTime(_start);
        var step = offset - _offset;
        if (step.Duration() < Least)
        {
            return TimeSpan.Zero;
        }

        _offset = offset;
        return step;
    }
}
