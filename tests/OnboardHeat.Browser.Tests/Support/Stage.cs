using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Simulation;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>One daemon over one replayed drive, and one browser to look at its page.</summary>
public abstract class Stage : IAsyncLifetime
{
    private readonly ReplayedVan _van;
    private readonly RunningDaemon _daemon;
    private IPlaywright? _playwright;
    private readonly List<IBrowserContext> _phones = [];
    private IBrowser? _browser;

    /// <summary>A daemon that begins at this second of the day.</summary>
    protected Stage(DrivePlan plan, double fromS, double reliefCelsius = 90)
    {
        _van = new ReplayedVan(plan, fromS, reliefCelsius);
        _daemon = RunningDaemon.Start(_van.Configuration);
    }

    internal string Address => $"http://localhost:{_van.Port}";

    /// <inheritdoc/>
    public virtual async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await Chromium.LaunchAsync(_playwright);
        await _daemon.SaysAsync("page at");
        await _daemon.SaysAsync("control socket");
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        await _browser!.DisposeAsync();
        _playwright!.Dispose();
        _daemon.Dispose();
        await _van.DisposeAsync();
    }

    /// <summary>A phone of its own (nothing is shared with another) on a page of the daemon.</summary>
    internal async Task<IPage> OpenAsync(
        string path = "/", BrowserNewContextOptions? phone = null, Func<IPage, Task>? before = null)
    {
        var context = await _browser!.NewContextAsync(
            phone ?? new BrowserNewContextOptions { ViewportSize = Screens.Phone });
        _phones.Add(context);
        var page = await context.NewPageAsync();
        page.PageError += (_, error) => Faults.Add(error);
        if (before is not null)
        {
            await before(page);
        }

        await page.GotoAsync(Address + path);
        return page;
    }

    /// <summary>Pairs the phone that a page is open on, by a code of the command line.</summary>
    internal async Task PairAsync(IPage page)
    {
        var said = await CommandAsync("pair");
        var code = said.Split("Code ")[1][..9];
        var entry = await page.Context.NewPageAsync();
        await entry.GotoAsync(Address + "/pair");
        await entry.GetByLabel("Code").FillAsync(code);
        await entry.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await Assertions.Expect(entry.Locator("#said")).ToContainTextAsync("Paired as");
        Assert.NotEmpty(await CommandAsync("unpair"));
    }

    /// <summary>Puts all phones away: a daemon has room for so many live pages only.</summary>
    internal async Task PutAwayAsync()
    {
        foreach (var phone in _phones)
        {
            await phone.DisposeAsync();
        }

        _phones.Clear();
    }

    /// <summary>The newest picture, as the interface gives it.</summary>
    internal async Task<JsonNode> PictureAsync()
    {
        using var client = new HttpClient();
        return JsonNode.Parse(await client.GetStringAsync(Address + "/api/v1/picture"))!;
    }

    /// <summary>What a page's scripts threw.</summary>
    internal List<string> Faults { get; } = [];

    /// <summary>Runs a command beside the daemon and gives what it printed.</summary>
    internal async Task<string> CommandAsync(params string[] arguments)
    {
        var outcome = await WholeProgram.RunAsync([.. arguments, "--config", _van.Configuration]);
        Assert.True(outcome.ExitCode == 0, outcome.Errors);
        return outcome.Output;
    }

    /// <summary>Stops the daemon where it stands, or lets it go on: <c>STOP</c>, <c>CONT</c>.</summary>
    internal async Task SignalAsync(string signal)
    {
        using var kill = Process.Start("kill", ["-" + signal, _daemon.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        Assert.Equal(0, kill.ExitCode);
    }
}
