using System.Net.Sockets;
using System.Security.Cryptography;
using Microsoft.Extensions.Logging;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Glance;

namespace OnboardHeat.Daemon.Running;

/// <summary>Keeps the page up: an address that is taken or not there yet is told once and tried again.</summary>
internal sealed class PageWorker(GlanceSettings settings, GlancePorts ports, TimeProvider time, ILogger log)
{
    /// <summary>A network that comes up late, a port that another program lets go.</summary>
    private static readonly TimeSpan s_retryEvery = TimeSpan.FromSeconds(30);

    private volatile GlanceServer? _up;

    /// <summary>Makes phones known; null while the page is not up.</summary>
    public IPairing? Pairing => _up;

    public async Task RunAsync(CancellationToken ending)
    {
        var hasTold = false;
        while (!ending.IsCancellationRequested)
        {
            try
            {
                await ServeAsync(ending).ConfigureAwait(false);
            }
            catch (Exception fault)
                when (fault is IOException or SocketException or UnauthorizedAccessException or CryptographicException)
            {
                if (!hasTold)
                {
                    Log.NoPage(log, settings.Listen, settings.Port, fault.Message);
                }

                hasTold = true;
                await RestAsync(s_retryEvery, ending).ConfigureAwait(false);
            }
        }
    }

    private async Task ServeAsync(CancellationToken ending)
    {
        await using var server = new GlanceServer(settings, ports);
        await server.StartAsync(CancellationToken.None).ConfigureAwait(false);
        Log.PageOpen(log, server.Address);
        _up = server;
        await RestAsync(Timeout.InfiniteTimeSpan, ending).ConfigureAwait(false);
        _up = null;
    }

    private async Task RestAsync(TimeSpan span, CancellationToken ending) =>
        await Task.Delay(span, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
}
