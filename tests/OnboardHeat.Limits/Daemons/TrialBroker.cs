using System.Buffers;
using System.Net;
using System.Text;
using MQTTnet.Server;

namespace OnboardHeat.Limits.Daemons;

/// <summary>A broker in this process that can go and come back, and shows every message as it arrives.</summary>
internal sealed class TrialBroker(int port, Action<string, string> received) : IAsyncDisposable
{
    private MqttServer? _server;

    public int Port => port;

    public async Task StartAsync()
    {
        var options = new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointPort(port)
            .WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
                .WithDefaultEndpointBoundIPV6Address(IPAddress.None).Build();
        var server = new MqttServerFactory().CreateMqttServer(options);
        server.InterceptingPublishAsync += message =>
        {
            received(
                message.ApplicationMessage.Topic,
                Encoding.UTF8.GetString(message.ApplicationMessage.Payload.ToArray()));
            return Task.CompletedTask;
        };
        await server.StartAsync();
        _server = server;
    }

    public async Task StopAsync()
    {
        if (_server is { } server)
        {
            _server = null;
            await server.StopAsync();
            server.Dispose();
        }
    }

    public async ValueTask DisposeAsync() => await StopAsync();
}
