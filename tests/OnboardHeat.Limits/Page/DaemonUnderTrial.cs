using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using OnboardHeat.Browser.Tests.Support;

namespace OnboardHeat.Limits.Page;

/// <summary>The whole program as a daemon over a replayed van.</summary>
internal sealed class DaemonUnderTrial : IDisposable
{
    private readonly string _program;
    private readonly ReplayedVan _van;
    private readonly Process _process;

    private DaemonUnderTrial(string program, ReplayedVan van, Process process)
    {
        _program = program;
        _van = van;
        _process = process;
        Process = new ProcessFigures(process.Id);
        // Its journal goes to standard output, which must not fill up.
        process.OutputDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
    }

    public Uri Address => new($"http://localhost:{_van.Port}/");

    public ProcessFigures Process { get; }

    public static DaemonUnderTrial Start(string program, ReplayedVan van)
    {
        var start = new ProcessStartInfo(program, ["run", "--config", van.Configuration])
        {
            WorkingDirectory = "/", RedirectStandardOutput = true,
        };
        // As the unit has it (systemd/onboardheat.service).
        foreach (var (name, value) in UnitEnvironment())
        {
            start.Environment[name] = value;
        }

        return new DaemonUnderTrial(program, van, System.Diagnostics.Process.Start(start)!);
    }

    private static IEnumerable<(string Name, string Value)> UnitEnvironment() =>
        from line in File.ReadLines("systemd/onboardheat.service")
        where line.StartsWith("Environment=MALLOC", StringComparison.Ordinal)
        let parts = line["Environment=".Length..].Split('=')
        select (parts[0], parts[1]);

    /// <summary>Waits for the first picture.</summary>
    public async Task UpAsync()
    {
        using var client = new HttpClient();
        for (var tries = 0; tries < 300; tries++)
        {
            try
            {
                using var answer = await client.GetAsync(new Uri(Address, "api/v1/picture"));
                if (answer.IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, CancellationToken.None);
        }

        throw new TimeoutException("The daemon did not come up.");
    }

    /// <summary>Pairs as a phone does; the cookie and the token.</summary>
    public async Task<(string Cookie, string Token)> PairAsync()
    {
        using var pair = System.Diagnostics.Process.Start(
            new ProcessStartInfo(_program, ["pair", "--config", _van.Configuration])
            {
                RedirectStandardOutput = true,
            })!;
        var said = await pair.StandardOutput.ReadToEndAsync();
        var code = said.Split("Code ")[1][..9];
        using var client = new HttpClient(new SocketsHttpHandler { UseCookies = false });
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(Address, "api/v1/pair"))
        {
            Content = new StringContent($$"""{"code":"{{code}}","name":"trial"}""", Encoding.UTF8, "application/json"),
        };
        request.Headers.Add("Origin", Address.ToString().TrimEnd('/'));
        using var answer = await client.SendAsync(request);
        answer.EnsureSuccessStatusCode();
        using var body = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        var cookie = answer.Headers.GetValues("Set-Cookie").Single();
        return (cookie[..cookie.IndexOf(';')], body.RootElement.GetProperty("token").GetString()!);
    }

    /// <summary>Asks it to stop, as the service manager does; the seconds it took.</summary>
    public async Task<double> TerminateAsync()
    {
        var began = TimeProvider.System.GetTimestamp();
        using var kill = System.Diagnostics.Process.Start(
            "kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await _process.WaitForExitAsync();
        return TimeProvider.System.GetElapsedTime(began).TotalSeconds;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }

        _process.Dispose();
    }
}
