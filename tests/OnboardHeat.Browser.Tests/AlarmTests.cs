using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using OnboardHeat.Browser.Tests.Support;
using static Microsoft.Playwright.Assertions;

namespace OnboardHeat.Browser.Tests;

/// <summary>The tank is too hot: what the page shows, and what a touch does.</summary>
public sealed class AlarmTests(AlarmStage stage) : IClassFixture<AlarmStage>, IAsyncLifetime
{
    // The alarm stands already; a busy machine draws slowly.
    private const float PatienceMs = 20_000;

    public Task InitializeAsync() => Task.CompletedTask;

    public Task DisposeAsync() => stage.PutAwayAsync();

    [Fact]
    public async Task Alarm_Appears_AndIsAcknowledgedByAPairedPhoneOnly()
    {
        var page = await stage.OpenAsync();
        await CriticalAsync(page);
        var first = (string)(await stage.PictureAsync())["alarms"]![0]!["whatToDo"]![0]!;
        var lead = page.Locator("#alarms .is-lead");
        await Expect(lead).ToContainTextAsync("Tank too hot");
        await Expect(lead.Locator("li").First).ToHaveTextAsync(first);
        await Expect(page).ToHaveTitleAsync("■ Tank too hot");
        await Expect(page.Locator("#announce")).ToContainTextAsync($"Tank too hot. {first}");

        var seen = page.GetByRole(AriaRole.Button, new() { Name = "Seen: Tank too hot" });
        await seen.ClickAsync();
        await Expect(lead.Locator(".said")).ToContainTextAsync("Not done");
        await stage.PairAsync(page);

        await seen.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(lead.Locator(".is-seen")).ToContainTextAsync("seen", new() { Timeout = PatienceMs });
        await Expect(lead).Not.ToHaveAttributeAsync("data-owed", "");
        Assert.Empty(stage.Faults);
    }

    [Fact]
    public async Task OnlyWhatNobodyHasSeen_Flashes()
    {
        var page = await stage.OpenAsync();
        await CriticalAsync(page);
        Assert.All(await Sight.FlashingAsync(page), words => Assert.Equal("owed", words.GetString()));
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        Assert.Empty(await Sight.FlashingAsync(page));
    }

    [Fact]
    public async Task Axe_FindsNoSeriousFaultOnTheAlarm()
    {
        foreach (var isNight in (bool[])[false, true])
        {
            var page = await stage.OpenAsync(phone: Screens.Of(360, 740, isNight));
            await CriticalAsync(page);
            var found = await page.RunAxe();
            Assert.NotEmpty(found.Passes);
            Assert.Empty(found.Violations.Where(v => v.Impact is "serious" or "critical")
                .Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        }
    }

    [Theory]
    [MemberData(nameof(Screens.All), MemberType = typeof(Screens))]
    public async Task Texts_AreLargeEnoughAtArmsLength_AndStandOutDayAndNight(int width, int height)
    {
        foreach (var isNight in (bool[])[false, true])
        {
            var page = await stage.OpenAsync(phone: Screens.Of(width, height, isNight));
            await CriticalAsync(page);
            var texts = await Sight.TextsAsync(page);
            Assert.True(texts.Count > 15, $"{texts.Count} texts");
            foreach (var text in texts)
            {
                var words = text.GetProperty("text").GetString();
                // ISO 15008: a capital of 20 arc minutes is recommended, 16 acceptable, 12 the least; 0.7 m is an arm's
                // length.
                var arcMinutes = Math.Atan(
                    text.GetProperty("capitalPx").GetDouble() * Screens.PixelMm(width) / 700) * 180 * 60 / Math.PI;
                var least = text.GetProperty("isFine").GetBoolean() ? 12 : 16;
                Assert.True(
                    Math.Round(arcMinutes, 1) >= least,
                    $"'{words}' has {arcMinutes:0.0} arc minutes at {width} px, {least} at least");
                // WCAG 2.2, 1.4.3 (AA): 4.5 for text of any size.
                var contrast = text.GetProperty("contrast").GetDouble();
                Assert.True(contrast >= 4.5, $"'{words}' stands out by {contrast:0.00} only, night {isNight}");
            }

            // WCAG 2.2, 1.4.11 (AA): 3 for what is no text but carries meaning.
            Assert.All(await Sight.MarksAsync(page), mark => Assert.True(
                mark.GetProperty("contrast").GetDouble() >= 3, mark.ToString()));
        }
    }

    [Theory]
    [MemberData(nameof(Screens.All), MemberType = typeof(Screens))]
    public async Task AlarmItsFirstStepAndItsButton_AreOnTheScreenWithoutScrolling(int width, int height)
    {
        foreach (var isNight in (bool[])[false, true])
        {
            var page = await stage.OpenAsync(phone: Screens.Of(width, height, isNight));
            await CriticalAsync(page);
            foreach (var part in (string[])["h3", "li:first-child", "button"])
            {
                await Expect(page.Locator($"#alarms .is-lead {part}").First)
                    .ToBeInViewportAsync(new() { Ratio = 0.99f });
            }

            Assert.True(
                await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"),
                "the page is wider than the screen");
            await Picture.KeepAsync(page, $"alarm-{width}-{(isNight ? "night" : "day")}");
        }
    }

    [Fact]
    public async Task NameThatLooksLikeMarkup_StaysText()
    {
        var page = await stage.OpenAsync();
        await CriticalAsync(page);
        await Expect(page.Locator("main")).ToContainTextAsync(ReplayedVan.HoseName);
        Assert.Null(await page.Locator("body").GetAttributeAsync("data-leaked"));
        Assert.Equal(0, await page.Locator("main img").CountAsync());
    }

    [Fact]
    public async Task Contrast_IsWorkedOutAsTheStandardDoes()
    {
        var page = await stage.OpenAsync();
        // WCAG's own ends of the scale; #777777 on white is the common example of a pair that just fails (4.48).
        Assert.Equal(21, await Sight.ContrastAsync(page, "[0,0,0],[255,255,255]"), 0.001);
        Assert.Equal(4.48, await Sight.ContrastAsync(page, "[119,119,119],[255,255,255]"), 0.005);
    }

    private static Task CriticalAsync(IPage page) =>
        Expect(page.Locator("#alarms .is-lead[data-priority=critical]"))
            .ToBeVisibleAsync(new() { Timeout = PatienceMs });
}
