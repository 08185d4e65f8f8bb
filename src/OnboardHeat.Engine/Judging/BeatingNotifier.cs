using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Judging;

/// <summary>
/// Beats with the very turn of the loop that feeds the watchdog: what restarts us and what turns the lamp red agree.
/// </summary>
public sealed class BeatingNotifier(IServiceNotifier inner, IHeartbeat heartbeat) : IServiceNotifier
{
    /// <inheritdoc/>
    public void Ready() => inner.Ready();

    /// <inheritdoc/>
    public void FeedWatchdog()
    {
        inner.FeedWatchdog();
        heartbeat.Beat();
    }

    /// <inheritdoc/>
    public void Stopping() => inner.Stopping();
}
