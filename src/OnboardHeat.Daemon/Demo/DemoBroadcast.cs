using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging.Abstractions;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Messaging;

namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// The demo's day on the embedded broker, by the same chain as on the road: each scan and its picture as a turn on the
/// feed, the messaging worker at its end. A port that another program has costs the demo nothing but its listeners.
/// </summary>
internal sealed class DemoBroadcast : IActionInbox, IAsyncDisposable
{
    /// <summary>The van's id in topics.</summary>
    public const string VanId = "demo";

    /// <summary>
    /// Turns come many times a second of real time; a demo that says nothing for so long has been stopped.
    /// </summary>
    private static readonly TimeSpan s_longestPeriod = TimeSpan.FromSeconds(10);

    private readonly CancellationTokenSource _ending = new();
    private readonly TurnFeed _feed = new();
    private readonly MessagingWorker? _worker;
    private readonly Task _running = Task.CompletedTask;

    public DemoBroadcast(int port, TimeProvider time)
    {
        if (TroubleAt(port) is { } trouble)
        {
            Notice = $"port {port} is not to be had ({trouble}): nobody can listen; --port takes another";
            return;
        }

        var options = new MessagingOptions { EmbeddedBroker = true, Port = port };
        _worker = new MessagingWorker(
            options, VanId, DemoDay.Description.Fitted, _feed.Subscribe("messaging", MessagingWorker.QueueCapacity),
            this, null,
            s_longestPeriod, time, NullLogger.Instance);
        _running = Task.Run(() => _worker.RunAsync(_ending.Token), CancellationToken.None);
        Notice = $"listen with: mosquitto_sub -h 127.0.0.1 -p {port} -v -t 'onboardheat/{VanId}/#'";
    }

    /// <summary>How to listen, or why nobody can.</summary>
    public string Notice { get; }

    /// <summary>Says a turn to whoever listens; never waits.</summary>
    public void Publish(Scan scan, Picture picture) => _feed.Publish(new Turn(scan.Copy(), picture));

    /// <summary>The demo's crew acts by itself; nothing is accepted from outside.</summary>
    public bool Offer(PersonAction action) => false;

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync().ConfigureAwait(false);
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (_worker is not null)
        {
            await _worker.DisposeAsync().ConfigureAwait(false);
        }

        _ending.Dispose();
    }

    /// <summary>
    /// Why the port cannot be opened, or null. Asked before, so that the demo can say so in one line and go on.
    /// </summary>
    private static string? TroubleAt(int port)
    {
        try
        {
            using var listener = new TcpListener(IPAddress.Loopback, port);
            listener.Start();
            return null;
        }
        catch (SocketException fault)
        {
            return fault.Message;
        }
    }
}
