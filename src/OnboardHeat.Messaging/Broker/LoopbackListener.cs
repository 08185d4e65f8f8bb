using System.Net;
using System.Net.Sockets;
using MQTTnet.Adapter;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Implementations;
using MQTTnet.Server;
using OnboardHeat.Messaging.Link;

namespace OnboardHeat.Messaging.Broker;

/// <summary>
/// Listens on loopback for the embedded broker. The library's own listener knows no limit to the size of a packet;
/// through this one a client that begins too large a packet is cut off before memory is taken for it.
/// </summary>
internal sealed class LoopbackListener(int port) : IMqttServerAdapter
{
    private CancellationTokenSource? _stopping;
    private TcpListener? _listener;
    private Task _accepting = Task.CompletedTask;

    public int Port { get; private set; } = port;

    public Func<IMqttChannelAdapter, Task> ClientHandler { get; set; } = _ => Task.CompletedTask;

    public Task StartAsync(MqttServerOptions options, IMqttNetLogger logger)
    {
        var listener = new TcpListener(IPAddress.Loopback, Port);
        listener.Start();
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        _listener = listener;
        _stopping = new CancellationTokenSource();
        _accepting = AcceptAsync(listener, logger, _stopping.Token);
        return Task.CompletedTask;
    }

    public async Task StopAsync()
    {
        if (_stopping is { } stopping)
        {
            await stopping.CancelAsync();
            _listener?.Dispose();
            await _accepting;
            stopping.Dispose();
            _stopping = null;
        }
    }

    public void Dispose()
    {
        _listener?.Dispose();
        _stopping?.Dispose();
    }

    private async Task AcceptAsync(TcpListener listener, IMqttNetLogger logger, CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                var client = await listener.AcceptTcpClientAsync(stopping);
                _ = ServeAsync(client, logger);
            }
            catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                // A client that went away while it was let in is its own affair; a stop ends the loop.
            }
        }
    }

    private async Task ServeAsync(TcpClient client, IMqttNetLogger logger)
    {
        try
        {
            client.NoDelay = true;
            var channel = new MqttTcpChannel(
                client.GetStream(), client.Client.LocalEndPoint, client.Client.RemoteEndPoint, null);
            using var adapter = LimitedAdapters.ForIncoming(channel, logger);
            await ClientHandler(adapter);
        }
        catch (Exception e) when (e is MQTTnet.Exceptions.MqttCommunicationException
            or IOException or SocketException or ObjectDisposedException)
        {
            // One listener's broken connection concerns nobody else.
        }
        finally
        {
            client.Dispose();
        }
    }
}
