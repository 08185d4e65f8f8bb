using System.Text.Json.Nodes;
using Microsoft.Playwright;
using OnboardHeat.Browser.Tests.Support;
using static Microsoft.Playwright.Assertions;

namespace OnboardHeat.Browser.Tests;

/// <summary>The glance while nothing is wrong.</summary>
public sealed class CalmTests(CalmStage stage) : IClassFixture<CalmStage>, IAsyncLifetime
{
    // The page's own patience is what is looked at; the test only has to outlast it.
    private const float PatienceMs = 30_000;

    public Task InitializeAsync() => Task.CompletedTask;

    public Task DisposeAsync() => stage.PutAwayAsync();

    [Fact]
    public async Task Glance_FollowsTheCoolantWithoutBeingAsked()
    {
        var page = await stage.OpenAsync();
        await Expect(page.Locator("#flow")).ToContainTextAsync("°C");
        var before = await page.Locator("#flow").TextContentAsync();
        await Expect(page.Locator("#flow")).Not.ToHaveTextAsync(before!, new() { Timeout = PatienceMs });
        await Expect(page.Locator("#layers li")).Not.ToHaveCountAsync(0);
        Assert.Empty(stage.Faults);
    }

    [Fact]
    public async Task FrozenDaemon_IsToldWithFiguresNoOlderThanTenSeconds_UntilItGoesOn()
    {
        var page = await stage.OpenAsync();
        await Expect(page.Locator("#flow")).ToContainTextAsync("°C");
        await page.EvaluateAsync("""
            new MutationObserver(() => window.firstWords ??= document.getElementById('stale').textContent)
              .observe(document.getElementById('stale'), { childList: true })
            """);
        await stage.SignalAsync("STOP");
        try
        {
            await Expect(page.Locator("#stale")).ToContainTextAsync("No connection", new() { Timeout = PatienceMs });
            var words = await page.EvaluateAsync<string>("window.firstWords");
            var age = int.Parse(
                new string([.. words.Where(char.IsAsciiDigit)]), System.Globalization.CultureInfo.InvariantCulture);
            Assert.InRange(age, 5, 10);
            await Expect(page.Locator("body")).ToHaveAttributeAsync("data-old", "");
        }
        finally
        {
            await stage.SignalAsync("CONT");
        }

        await Expect(page.Locator("#stale")).ToBeHiddenAsync(new() { Timeout = PatienceMs });
        await Expect(page.Locator("body")).Not.ToHaveAttributeAsync("data-old", "");
    }

    [Fact]
    public async Task JudgingThatHangsBehindALivingServer_IsToldWithItsAge()
    {
        var picture = await stage.PictureAsync();
        var page = await stage.OpenAsync(
            before: page => ShowAsync(page, picture, """{"pictureAgeS":41.0,"overdueS":15}"""));
        await Expect(page.Locator("#stale")).ToContainTextAsync("No new readings. Figures are 4");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1)]
    public async Task PhoneClockWrongByDays_ChangesNothingThatIsTold(int days)
    {
        var picture = await stage.PictureAsync();
        picture["time"] = "2026-05-28T09:12:41Z";
        picture["timeTrusted"] = true;
        picture["forecast"]!["until"] = "at";
        picture["forecast"]!["usableUntil"] = "2026-05-29T04:40:00Z";
        picture["forecast"]!["usableForS"] = 70_039;
        var page = await stage.OpenAsync(
            phone: new BrowserNewContextOptions { TimezoneId = "Europe/Zurich", Locale = "en-GB" },
            before: async page =>
            {
                await page.AddInitScriptAsync($$"""
                    const shift = {{days}} * 86400000, Real = Date;
                    Date = class extends Real { constructor(...a) { if (a.length) super(...a); else super(Real.now() + shift); } };
                    Date.now = () => Real.now() + shift;
                    """);
                await ShowAsync(page, picture, """{"pictureAgeS":0.1,"overdueS":15}""");
            });
        await Expect(page.Locator("#until")).ToHaveTextAsync("Warm enough until 06:40 tomorrow");
        await Expect(page.Locator("#stamp")).ToHaveTextAsync("up to date");
        await Expect(page.Locator("#stale")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task NightLook_FollowsTheDevice_AndTheHand()
    {
        var page = await stage.OpenAsync(phone: Screens.Of(800, 480, isNight: true));
        var root = page.Locator("html");
        await Expect(root).ToHaveAttributeAsync("data-look", "night");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await Expect(root).ToHaveAttributeAsync("data-look", "day");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look: automatic" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look: day" }).ClickAsync();
        await Expect(root).ToHaveAttributeAsync("data-look", "night");
        await page.ReloadAsync();
        await Expect(root).ToHaveAttributeAsync("data-look", "night");
    }

    [Theory]
    [MemberData(nameof(Screens.All), MemberType = typeof(Screens))]
    public async Task ShowerTankAndCoolant_AreOnTheScreenWithoutScrolling(int width, int height)
    {
        foreach (var isNight in (bool[])[false, true])
        {
            var page = await stage.OpenAsync(phone: Screens.Of(width, height, isNight));
            await Expect(page.Locator("#flow")).ToContainTextAsync("°C");
            foreach (var part in (string[])[".shower", ".tank", ".circuit"])
            {
                await Expect(page.Locator(part)).ToBeInViewportAsync(new() { Ratio = 0.99f });
            }

            await Picture.KeepAsync(page, $"calm-{width}-{(isNight ? "night" : "day")}");
        }
    }

    [Fact]
    public async Task Glance_SaysThatItIsNoAlarm_AndAsksNobodyElse()
    {
        var asked = new List<string>();
        var page = await stage.OpenAsync(before: page =>
        {
            page.Request += (_, request) => asked.Add(request.Url);
            return Task.CompletedTask;
        });
        await Expect(page.Locator("footer")).ToContainTextAsync("This page is no alarm: the buzzer is.");
        await Expect(page.Locator("#flow")).ToContainTextAsync("°C");
        Assert.NotEmpty(asked);
        Assert.All(asked, url => Assert.StartsWith(stage.Address, url));
    }

    // The daemon's own picture, changed where a test says so, down a line that stays as it is.
    private static Task ShowAsync(IPage page, JsonNode picture, string beat) =>
        page.RouteAsync("**/api/v1/live", route => route.FulfillAsync(
        new()
        {
            ContentType = "text/event-stream",
            Body = $"event: picture\ndata: {picture.ToJsonString()}\n\nevent: beat\ndata: {beat}\n\n",
        }));
}
