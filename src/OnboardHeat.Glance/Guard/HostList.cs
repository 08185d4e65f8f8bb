using System.Net;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// The names under which this page may be asked for. A browser that was led here under any other name (DNS rebinding)
/// is refused on every route, so a foreign page cannot read through it.
/// </summary>
internal sealed class HostList
{
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// The usual loopback names, the address listened on, and the machine's own name on the van's network.
    /// </summary>
    public HostList(string listen, int port, string machineName)
    {
        foreach (var name in (string[])["localhost", "127.0.0.1", "[::1]"])
        {
            Add(name, port);
        }

        if (IPAddress.TryParse(listen, out var address) && !IPAddress.IsLoopback(address))
        {
            if (address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any))
            {
                AcceptsAnyAddress = true;
                Port = port;
            }
            else
            {
                Add(address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6
                    ? $"[{address}]" : address.ToString(), port);
            }

            Add(machineName, port);
            Add(machineName + ".local", port);
        }
    }

    /// <summary>
    /// Whether any literal IP address at our port is a name of ours: true when listening on all. A rebound name is no
    /// literal.
    /// </summary>
    public bool AcceptsAnyAddress { get; }

    private int Port { get; }

    /// <summary>Whether the Host header is one of ours.</summary>
    public bool Accepts(string? host)
    {
        if (string.IsNullOrEmpty(host))
        {
            return false;
        }

        return _names.Contains(host)
            || (AcceptsAnyAddress && IPEndPoint.TryParse(host, out var end)
            && (end.Port == Port || (end.Port == 0 && Port == 80))
                && end.ToString().Equals(host, StringComparison.OrdinalIgnoreCase));
    }

    private void Add(string name, int port)
    {
        _names.Add($"{name}:{port}");
        if (port is 80 or 443)
        {
            _names.Add(name);
        }
    }
}
