using System.Net.Sockets;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Tells systemd how we fare, over the socket it names in NOTIFY_SOCKET (sd_notify(3)); without one it tells nobody.
/// The library's notifier waits until there is room in that socket, and the kernel keeps ten notices: a service manager
/// that does not read would stop the loop that judges. This one never waits: a notice for which there is no room is let
/// go.
/// </summary>
internal sealed class SystemdNotices : IServiceNotifier, IDisposable
{
    private readonly Socket? _socket;
    private readonly UnixDomainSocketEndPoint? _manager;

    public SystemdNotices()
    {
        if (Environment.GetEnvironmentVariable("NOTIFY_SOCKET") is not { Length: > 1 } path)
        {
            return;
        }

        // A path beginning with '@' stands for the abstract namespace, whose names begin with a zero byte (unix(7)).
        _manager = new UnixDomainSocketEndPoint(path[0] == '@' ? $"\0{path[1..]}" : path);
        _socket = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { Blocking = false };
    }

    /// <summary>
    /// Whether the service manager waits for our feeding (sd_watchdog_enabled(3): it says so in WATCHDOG_USEC).
    /// </summary>
    public static bool HasWatchdog => Environment.GetEnvironmentVariable("WATCHDOG_USEC") is { Length: > 0 };

    public void Ready() => Tell("READY=1"u8);

    public void FeedWatchdog() => Tell("WATCHDOG=1"u8);

    public void Stopping() => Tell("STOPPING=1"u8);

    public void Dispose() => _socket?.Dispose();

    private void Tell(ReadOnlySpan<byte> state)
    {
        try
        {
            _socket?.SendTo(state, _manager!);
        }
        catch (SocketException)
        {
            // A service manager that cannot be told will judge by our silence; nothing here could do better.
        }
    }
}
