using System.Net;
using System.Net.Sockets;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>The broker inside the daemon, asked for by option.</summary>
internal sealed class InsideBroker : IBrokerUnderTest
{
    public InsideBroker()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public int Port { get; }

    public MessagingOptions Options => new() { EmbeddedBroker = true, Port = Port };

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
