using System.Net;
using Microsoft.Extensions.Logging.Abstractions;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Glance;

namespace OnboardHeat.Adapters.Tests.Glance;

/// <summary>A page on a free loopback port, fed by hand.</summary>
internal sealed class ServedPage : IAsyncDisposable
{
    private readonly Monitor _monitor;
    private readonly TimeSpan _step = TimeSpan.FromSeconds(2);
    private TimeSpan _elapsed;

    private ServedPage(
        bool isReadingOpen, TimeProvider time, IRecordReader? record, VanDescription? van,
        (string File, string Key)? certificate)
    {
        var fitted = new FittedSet([Channel.TankTop, Channel.TankBottom], [Signal.EngineRunning]);
        _monitor = new Monitor(new VanDescription { Fitted = fitted }, KeptState.Fresh);
        Server = new GlanceServer(
            new GlanceSettings
            {
                VanId = "van", Port = 0, Listen = "127.0.0.1", IsReadingOpen = isReadingOpen,
                CertificateFile = certificate?.File, CertificateKeyFile = certificate?.Key,
            },
            new GlancePorts(
                Feed, new PictureJson("van", fitted), Inbox, record, time, NullLoggerFactory.Instance, van));
    }

    public TurnFeed Feed { get; } = new();

    public ActionInbox Inbox { get; } = new();

    public GlanceServer Server { get; }

    public HttpClient Client { get; private set; } = new();

    public string Host => $"127.0.0.1:{Server.Address!.Port}";

    public static async Task<ServedPage> StartAsync(
        bool isReadingOpen = false, TimeProvider? time = null, IRecordReader? record = null,
        VanDescription? van = null, (string File, string Key)? certificate = null)
    {
        var page = new ServedPage(isReadingOpen, time ?? TimeProvider.System, record, van, certificate);
        await page.Server.StartAsync(CancellationToken.None);
        page.Client.Dispose();
        var handler = new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false };
        // A certificate of the test's own: whom it was signed by is not what is tested.
        handler.SslOptions.RemoteCertificateValidationCallback = (_, _, _, _) => true;
        page.Client = new HttpClient(handler) { BaseAddress = page.Server.Address };
        return page;
    }

    /// <summary>One turn of the loop at this tank temperature.</summary>
    public void Turn(double celsius)
    {
        var scan = new Scan { Elapsed = _elapsed, Utc = DateTimeOffset.UnixEpoch + _elapsed, IsUtcTrusted = true };
        scan[Channel.TankTop] = scan[Channel.TankBottom] = Reading.Of(celsius);
        scan[Signal.EngineRunning] = true;
        Feed.Publish(new Turn(scan, _monitor.Observe(scan)));
        _elapsed += _step;
    }

    /// <summary>A request as a browser on our own page would send it.</summary>
    public HttpRequestMessage Ask(
        HttpMethod method, string path, string? json = null, (string Cookie, string Token)? phone = null)
    {
        var request = new HttpRequestMessage(method, path);
        if (json is not null)
        {
            request.Content = new StringContent(json, System.Text.Encoding.UTF8, "application/json");
            request.Headers.Add("Origin", $"{Server.Address!.Scheme}://{Host}");
        }

        if (phone is var (cookie, token))
        {
            request.Headers.Add("Cookie", cookie);
            request.Headers.Add("X-Onboardheat-Token", token);
        }

        return request;
    }

    /// <summary>Pairs a phone and gives its two secrets.</summary>
    public async Task<(string Cookie, string Token)> PairAsync()
    {
        var code = Server.NewCode().Code;
        using var answer = await Client.SendAsync(
            Ask(HttpMethod.Post, "/api/v1/pair", $$"""{"code":"{{code}}","name":"mine"}"""));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var token = System.Text.Json.JsonDocument.Parse(
            await answer.Content.ReadAsStringAsync()).RootElement.GetProperty("token").GetString()!;
        var cookie = answer.Headers.GetValues("Set-Cookie").Single();
        return (cookie[..cookie.IndexOf(';')], token);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await Server.DisposeAsync();
    }
}
