using System.Net;
using System.Net.Sockets;

namespace OnboardHeat.Glance.Guard;

/// <summary>Under which hosts a phone in the van finds this machine.</summary>
internal static class OwnAddresses
{
    /// <summary>An address that is nobody's (RFC 5737, TEST-NET-1): only the way there matters.</summary>
    private static readonly IPEndPoint s_elsewhere = new(IPAddress.Parse("192.0.2.1"), 9);

    /// <summary>Hosts as an address bar takes them, the likeliest first; never empty.</summary>
    public static IReadOnlyList<string> Of(IPAddress listens)
    {
        if (!listens.Equals(IPAddress.Any) && !listens.Equals(IPAddress.IPv6Any))
        {
            return [HostOf(listens)];
        }

        return [.. InNetworks().Select(HostOf), Dns.GetHostName() + ".local"];
    }

    // The address this machine would send from: asking the kernel for its interfaces is closed to the hardened service.
    // Nothing is sent.
    private static IEnumerable<IPAddress> InNetworks()
    {
        using var asked = new Socket(AddressFamily.InterNetwork, SocketType.Dgram, ProtocolType.Udp);
        try
        {
            asked.Connect(s_elsewhere);
            return asked.LocalEndPoint is IPEndPoint { Address: var own } && !IPAddress.IsLoopback(own) ? [own] : [];
        }
        catch (SocketException)
        {
            return [];
        }
    }

    private static string HostOf(IPAddress address) =>
        address.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{address}]" : address.ToString();
}
