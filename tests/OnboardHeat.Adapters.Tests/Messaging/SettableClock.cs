using Microsoft.Extensions.Time.Testing;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// Fake time whose wall clock can be set without moving the monotonic one, as a Pi's is when the network tells it the
/// time.
/// </summary>
internal sealed class SettableClock : FakeTimeProvider
{
    /// <summary>By how much the wall clock was set.</summary>
    public TimeSpan SetBy { get; set; }

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + SetBy;

    /// <summary>The base takes its timestamps from the wall clock; here the step is taken out of them again.</summary>
    public override long GetTimestamp() => base.GetTimestamp() - SetBy.Ticks;
}
