using Microsoft.Extensions.Time.Testing;

namespace OnboardHeat.Adapters.Tests.Judging;

/// <summary>
/// A clock whose wall time can be stepped while its monotonic time and timers go on: what a Pi does when it hears the
/// time.
/// </summary>
internal sealed class SteppedWallClock(DateTimeOffset start) : TimeProvider
{
    private readonly FakeTimeProvider _time = new(start);

    public TimeSpan Step { get; set; }

    public override long TimestampFrequency => _time.TimestampFrequency;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public void Advance(TimeSpan span) => _time.Advance(span);

    public override DateTimeOffset GetUtcNow() => _time.GetUtcNow() + Step;

    public override long GetTimestamp() => _time.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        _time.CreateTimer(callback, state, dueTime, period);
}
