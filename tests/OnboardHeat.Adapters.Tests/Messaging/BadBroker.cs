using System.Net;
using System.Net.Sockets;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>
/// A broker that misbehaves: takes connections and answers each with the given bytes, or with nothing.
/// </summary>
internal sealed class BadBroker : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _serving;

    public BadBroker(params byte[][] answers)
    {
        _listener.Start();
        _serving = ServeAsync(answers);
    }

    /// <summary>
    /// A CONNACK that accepts: type 2, length 3, no session, success, no properties (MQTT 5.0, section 3.2).
    /// </summary>
    public static byte[] Accepts => [0x20, 3, 0, 0, 0];

    public MessagingOptions Options => new() { Host = "127.0.0.1", Port = ((IPEndPoint)_listener.LocalEndpoint).Port };

    public int Connections { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _stopping.CancelAsync();
        _listener.Dispose();
        await _serving;
        _stopping.Dispose();
    }

    private async Task ServeAsync(byte[][] answers)
    {
        var clients = new List<TcpClient>();
        try
        {
            while (true)
            {
                var client = await _listener.AcceptTcpClientAsync(_stopping.Token);
                clients.Add(client);
                Connections++;
                foreach (var answer in answers)
                {
                    await client.GetStream().WriteAsync(answer, _stopping.Token);
                }
            }
        }
        catch (Exception e)
            when (e is OperationCanceledException or SocketException or ObjectDisposedException or IOException)
        {
            clients.ForEach(client => client.Dispose());
        }
    }
}
