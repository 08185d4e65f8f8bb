using System.Net.Sockets;
using System.Security.Cryptography;
using MQTTnet;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Protocol;
using MQTTnet.Server;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Topics;

namespace OnboardHeat.Messaging.Broker;

/// <summary>
/// A broker inside the daemon, for a van that has none: on loopback, in memory, gone with the daemon (its will with it:
/// subscribers see the connection end). Whoever is on this machine may listen, and may ask where actions are accepted;
/// only the daemon itself may speak under the van's root.
/// </summary>
internal sealed class EmbeddedBroker(int port, TopicTree topics) : IAsyncDisposable
{
    /// <summary>More listeners than a van has; each costs memory.</summary>
    public const int MaxClients = 16;

    /// <summary>
    /// Messages that wait for a slow listener; then its oldest go. The memory of all listeners together stays bounded.
    /// </summary>
    public const int MaxPending = 100;

    private readonly LoopbackListener _listener = new(port);
    private MqttServer? _server;

    /// <summary>Client id under which the daemon itself connects.</summary>
    public string OwnClientId { get; } = "onboardheat";

    /// <summary>Proves that a client is the daemon itself; made at start, told to nobody.</summary>
    public string OwnPassword { get; } = RandomNumberGenerator.GetHexString(32);

    /// <summary>The port in use once started: the one asked for, or for 0 one that was free.</summary>
    public int Port => _listener.Port;

    /// <summary>Starts it, unless it runs.</summary>
    /// <exception cref="BrokerException">The port is not to be had.</exception>
    public async Task EnsureStartedAsync()
    {
        if (_server is not null)
        {
            return;
        }

        var options = new MqttServerOptionsBuilder()
            .WithMaxPendingMessagesPerClient(MaxPending)
            .WithDefaultCommunicationTimeout(LinkLimits.Answer)
            .Build();
        var server = new MqttServer(options, [_listener], MqttNetNullLogger.Instance);
        server.ValidatingConnectionAsync += ValidateAsync;
        server.InterceptingPublishAsync += InterceptAsync;
        try
        {
            await server.StartAsync();
            _server = server;
        }
        catch (SocketException e)
        {
            server.Dispose();
            throw new BrokerException($"the embedded broker cannot open port {port}: {e.Message}");
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is { } server)
        {
            _server = null;
            await server.StopAsync(new MqttServerStopOptions());
            server.Dispose();
        }
    }

    private async Task ValidateAsync(ValidatingConnectionEventArgs e)
    {
        var isOwn = e.ClientId == OwnClientId;
        if (isOwn && e.Password != OwnPassword)
        {
            e.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
        }
        else if (!isOwn && _server is { } server && (await server.GetClientsAsync()).Count >= MaxClients)
        {
            e.ReasonCode = MqttConnectReasonCode.QuotaExceeded;
        }
        else if (e.ClientId.Length == 0)
        {
            // The library refuses a client without a name unless it is given one here (MQTT 5.0, section 3.1.3.1).
            e.AssignedClientIdentifier = $"guest-{RandomNumberGenerator.GetHexString(12, lowercase: true)}";
        }
    }

    private Task InterceptAsync(InterceptingPublishEventArgs e)
    {
        var topic = e.ApplicationMessage.Topic;
        if (e.ClientId != OwnClientId && topic.StartsWith(topics.Root, StringComparison.Ordinal)
            && topics.ActionOf(topic) is null)
        {
            e.ProcessPublish = false;
            e.Response.ReasonCode = MqttPubAckReasonCode.NotAuthorized;
        }

        return Task.CompletedTask;
    }
}
