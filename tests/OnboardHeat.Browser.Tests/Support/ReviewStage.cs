using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Playwright;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Glance;
using OnboardHeat.History;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>The page over a record of a week, and one browser to look back with.</summary>
public sealed class ReviewStage : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("onboardheat-week-").FullName;
    private readonly List<IBrowserContext> _phones = [];
    private ClosedRecord? _record;
    private GlanceServer? _server;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>What pages' scripts threw.</summary>
    internal List<string> Faults { get; } = [];

    /// <summary>What people did on the page.</summary>
    internal ActionInbox Inbox { get; } = new();

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        await RecordedWeek.WriteAsync(_folder);
        _record = ClosedRecord.Open(_folder);
        var van = RecordedWeek.Van;
        _server = new GlanceServer(
            new GlanceSettings { VanId = "touring", Port = 0, Listen = "127.0.0.1", IsReadingOpen = false },
            new GlancePorts(
                new TurnFeed(), new PictureJson("touring", van.Fitted), Inbox, _record.Reader, TimeProvider.System,
                NullLoggerFactory.Instance, van));
        await _server.StartAsync(CancellationToken.None);
        _playwright = await Playwright.CreateAsync();
        _browser = await Chromium.LaunchAsync(_playwright);
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        await _browser!.DisposeAsync();
        _playwright!.Dispose();
        await _server!.DisposeAsync();
        await _record!.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A phone of its own on a page; without a network where it only looks at a file.</summary>
    internal async Task<IPage> OpenAsync(string path, BrowserNewContextOptions? phone = null)
    {
        var isFile = path.StartsWith("file:", StringComparison.Ordinal);
        var context = await _browser!.NewContextAsync(
            phone ?? new BrowserNewContextOptions { ViewportSize = Screens.TenInches, Locale = "en-GB",
            Offline = isFile });
        _phones.Add(context);
        var page = await context.NewPageAsync();
        page.PageError += (_, error) => Faults.Add(error);
        await page.GotoAsync(isFile ? path : new Uri(_server!.Address!, path).ToString());
        return page;
    }

    /// <summary>Pairs the phone that a page is open on.</summary>
    internal async Task PairAsync(IPage page)
    {
        var entry = await page.Context.NewPageAsync();
        await entry.GotoAsync(new Uri(_server!.Address!, "/pair").ToString());
        await entry.GetByLabel("Code").FillAsync(_server.NewCode().Code);
        await entry.GetByRole(AriaRole.Button, new() { Name = "Pair" }).ClickAsync();
        await Assertions.Expect(entry.Locator("#said")).ToContainTextAsync("Paired as");
    }

    /// <summary>Puts all phones away.</summary>
    internal async Task PutAwayAsync()
    {
        foreach (var phone in _phones)
        {
            await phone.DisposeAsync();
        }

        _phones.Clear();
    }
}
