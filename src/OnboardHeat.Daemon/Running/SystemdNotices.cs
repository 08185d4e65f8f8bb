using Microsoft.Extensions.Hosting.Systemd;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Tells systemd how we fare, over the socket it names in NOTIFY_SOCKET; without one it tells nobody.
/// </summary>
internal sealed class SystemdNotices : IServiceNotifier
{
    private static readonly ServiceState s_watchdog = new("WATCHDOG=1");

    private readonly SystemdNotifier _notifier = new();

    /// <summary>
    /// Whether the service manager waits for our feeding (sd_watchdog_enabled(3): it says so in WATCHDOG_USEC).
    /// </summary>
    public static bool HasWatchdog => Environment.GetEnvironmentVariable("WATCHDOG_USEC") is { Length: > 0 };

    public void Ready() => Tell(ServiceState.Ready);

    public void FeedWatchdog() => Tell(s_watchdog);

    public void Stopping() => Tell(ServiceState.Stopping);

    private void Tell(ServiceState state)
    {
        try
        {
            _notifier.Notify(state);
        }
        catch (Exception fault) when (fault is System.Net.Sockets.SocketException or IOException)
        {
            // A service manager that cannot be told will judge by our silence; nothing here could do better.
        }
    }
}
