using System.Net;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Glance.Api;
using OnboardHeat.Glance.Guard;
using OnboardHeat.Glance.Live;
using OnboardHeat.Glance.Routing;

namespace OnboardHeat.Glance;

/// <summary>
/// The page and its interface. It reads turns from its own queue and actions go to the inbox: it cannot slow the loop.
/// </summary>
public sealed class GlanceServer : IAsyncDisposable, IPairing
{
    // A page shows the newest picture only, so two waiting turns are already one too many.
    private const int QueueCapacity = 2;

    private readonly GlanceSettings _settings;
    private readonly GlancePorts _ports;
    private readonly LivePages _pages;
    private readonly PairingDesk _desk;
    private readonly PhoneBook _phones;
    private readonly TurnQueue _turns;
    private readonly CancellationTokenSource _stopping = new();
    private WebApplication? _app;
    private Task _showing = Task.CompletedTask;

    /// <summary>A server that is not listening yet.</summary>
    public GlanceServer(GlanceSettings settings, GlancePorts ports)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(ports);
        _settings = settings;
        _ports = ports;
        _pages = new LivePages(ports.Time);
        _desk = new PairingDesk(ports.Time);
        _phones = new PhoneBook(settings.PhonesFile);
        _turns = ports.Feed.Subscribe("glance", QueueCapacity);
    }

    /// <summary>Where it listens; known after <see cref="StartAsync"/>.</summary>
    public Uri? Address { get; private set; }

    /// <inheritdoc/>
    public IReadOnlyList<(string Id, string Name, DateTimeOffset PairedUtc)> Phones =>
        [.. _phones.All.Select(phone => (phone.Id, phone.Name, phone.PairedUtc))];

    /// <summary>The routes, as the interface description and the tests see them.</summary>
    internal IReadOnlyList<Route> Routes { get; private set; } = [];

    /// <summary>Listens.</summary>
    /// <exception cref="IOException">The address is taken or not to be had.</exception>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.Sources.Clear();
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(_ports.Logs);
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(3));
        if (_settings.CertificateFile is not null)
        {
            builder.WebHost.UseKestrelHttpsConfiguration();
        }

        builder.WebHost.ConfigureKestrel(Listen);
        _app = builder.Build();
        var hosts = new HostListBox();
        var gate = new Gate(hosts.Accepts, _phones, _settings.IsReadingOpen);
        var audit = new AuditLog(_ports.Logs.CreateLogger("Page"), _ports.Time);
        var doors = new Doorway(gate, audit);
        Routes = RouteTable.For(_settings, _ports, _pages, gate, audit, _desk, _phones, _stopping.Token);
        foreach (var route in Routes)
        {
            _app.MapMethods(route.Path, [route.Method], context => doors.ServeAsync(context, route));
        }

        _app.MapFallback(doors.RefuseAsync);
        await _app.StartAsync(cancellationToken);
        Address = new Uri(
            _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        hosts.Names = new HostList(_settings.Listen, Address.Port, Dns.GetHostName());
        _showing = ShowAsync();
    }

    /// <summary>Ends every live page and stops listening.</summary>
    public async Task StopAsync()
    {
        await _stopping.CancelAsync();
        _ports.Feed.Unsubscribe(_turns);
        if (_app is not null)
        {
            await _app.StopAsync(CancellationToken.None);
        }

        await _showing;
    }

    /// <inheritdoc/>
    public PairingCode NewCode()
    {
        var listens = IPAddress.Parse(_settings.Listen);
        var addresses = OwnAddresses.Of(listens).Select(host => $"{Address?.Scheme}://{host}:{Address?.Port}/pair");
        return new PairingCode(_desk.NewCode(), PairingDesk.CodeLife, [.. addresses], !IPAddress.IsLoopback(listens));
    }

    /// <inheritdoc/>
    public int Forget(string id) => _phones.Remove(id);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        if (_app is not null)
        {
            await _app.DisposeAsync();
        }

        _stopping.Dispose();
    }

    private void Listen(KestrelServerOptions kestrel)
    {
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxRequestBodySize = Body.MostBytes;
        kestrel.Limits.MaxRequestHeadersTotalSize = 16 * 1024;
        // A browser opens up to six connections to a page: sixteen pages, and some to spare.
        kestrel.Limits.MaxConcurrentConnections = 128;
        kestrel.Limits.KeepAliveTimeout = TimeSpan.FromSeconds(15);
        kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        kestrel.Listen(IPAddress.Parse(_settings.Listen), _settings.Port, listen =>
        {
            listen.Protocols = HttpProtocols.Http1;
            if (_settings.CertificateFile is { } certificate)
            {
                listen.UseHttps(X509Certificate2.CreateFromPemFile(certificate, _settings.CertificateKeyFile));
            }
        });
    }

    private async Task ShowAsync()
    {
        var json = _ports.Json;
        await foreach (var turn in _turns.Reader.ReadAllAsync())
        {
            _pages.Show(json.Write(turn));
        }
    }

    // The port is known only once listening, and nobody is served before.
    private sealed class HostListBox
    {
        public HostList? Names { get; set; }

        public bool Accepts(string? host) => Names?.Accepts(host) ?? false;
    }
}
