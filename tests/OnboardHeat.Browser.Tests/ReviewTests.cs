using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using OnboardHeat.Browser.Tests.Support;
using OnboardHeat.Core.Scans;
using static Microsoft.Playwright.Assertions;

namespace OnboardHeat.Browser.Tests;

/// <summary>The evening after: the chart, the journeys, the comparison and the report.</summary>
public sealed class ReviewTests(ReviewStage stage) : IClassFixture<ReviewStage>, IAsyncLifetime
{
    private const string Week = "/review?from=2026-05-18T14:00:00Z&to=2026-05-25T14:00:00Z";
    private const float PatienceMs = 20_000;

    public Task InitializeAsync() => Task.CompletedTask;

    public Task DisposeAsync() => stage.PutAwayAsync();

    [Fact]
    public async Task Chart_ShowsWhatIsDraggedOver_AndGoesBack()
    {
        var page = await OpenAsync(Week);
        var (from, to) = Span(page);
        var over = await page.Locator("#chart .u-over").BoundingBoxAsync();
        var y = over!.Y + (over.Height / 2);
        await page.Mouse.MoveAsync(over.X + (over.Width * 0.25f), y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(over.X + (over.Width * 0.4f), y, new() { Steps = 5 });
        await page.Mouse.MoveAsync(over.X + (over.Width * 0.5f), y);
        await page.Mouse.UpAsync();

        var quarter = (to - from) / 4;
        await AwaitSpanAsync(page, span => Math.Abs(((span.To - span.From) / quarter) - 1) < 0.03);
        Assert.InRange((Span(page).From - from) / quarter, 0.97, 1.03);
        await Expect(page.Locator("#said")).ToHaveTextAsync("");

        await page.GetByRole(AriaRole.Button, new() { Name = "Back" }).ClickAsync();
        await AwaitSpanAsync(page, span => span == (from, to));
        Assert.Empty(stage.Faults);
    }

    [Fact]
    public async Task WheelAndKeys_ZoomAndMove()
    {
        var page = await OpenAsync(Week);
        var (from, to) = Span(page);
        await page.Locator("#chart .u-over").HoverAsync();
        await page.Mouse.WheelAsync(0, -100);
        await AwaitSpanAsync(page, span => Math.Abs(((to - from) / (span.To - span.From)) - 1.3) < 0.01);
        var closer = Span(page);
        await page.Locator("#chart").PressAsync("ArrowLeft");
        await AwaitSpanAsync(page, span => span.From < closer.From
            && Math.Abs(((span.To - span.From) / (closer.To - closer.From)) - 1) < 0.001);
        await page.Locator("#chart").PressAsync("-");
        await AwaitSpanAsync(page, span => span.To - span.From > 1.9 * (closer.To - closer.From));
    }

    [Fact]
    public async Task Year_IsShownAndMoved()
    {
        var page = await OpenAsync(Week);
        await page.GetByRole(AriaRole.Button, new() { Name = "Year" }).ClickAsync();
        await AwaitSpanAsync(page, span => (span.To - span.From).TotalDays is > 364 and < 366);
        await Expect(page.Locator("#said")).ToHaveTextAsync("");
        var year = Span(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Earlier" }).ClickAsync();
        await AwaitSpanAsync(page, span => Math.Abs((year.From - span.From).TotalDays - 182.5) < 1);
    }

    [Fact]
    public async Task ChosenJourney_StandsWithItsFigures_AndTheChartShowsIt()
    {
        var page = await OpenAsync(Week);
        await page.Locator(".journeys button", new() { HasText = "Standing" }).First.ClickAsync();
        await Expect(page.Locator("#figures-title")).ToContainTextAsync("Standing");
        foreach (var figure in (string[])["Water at start", "Water at end", "Warmest", "Heat given", "Loss",
            "Surroundings"])
        {
            await Expect(page.Locator("#figures dt", new() { HasText = figure })).ToHaveCountAsync(1);
        }

        await Expect(page.Locator("#figures")).ToContainTextAsync("W/K");
        await AwaitSpanAsync(page, span => (span.To - span.From).TotalHours is > 22 and < 40);
        await page.Locator(".journeys button", new() { HasText = "Heating run" }).First.ClickAsync();
        await Expect(page.Locator("#figures")).ToContainTextAsync("hose above its rating");
    }

    [Fact]
    public async Task TwoNights_AreLaidOverEachOther()
    {
        var page = await OpenAsync(Week);
        var nights = page.Locator(".journeys li", new() { HasText = "Standing" });
        await nights.First.GetByRole(AriaRole.Checkbox).CheckAsync();
        await nights.Last.GetByRole(AriaRole.Checkbox).CheckAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Compare these two" }).ClickAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("had both begun alike", new() { Timeout = PatienceMs });

        // The first ticked is of the better lagging: put on its footing, the other ends cooler.
        await Expect(page.Locator("#said")).ToContainTextAsync("K cooler than A");
        await Expect(page.Locator("#chart canvas")).ToHaveCountAsync(1);
        await Expect(page.Locator("#figures")).ToContainTextAsync("W/K");
        await page.Locator("#put").UncheckAsync();
        await Expect(page.Locator("#said")).ToContainTextAsync("as measured");
    }

    [Fact]
    public async Task BetterLagging_IsAnsweredWithItsIntervalAndItsNights()
    {
        var page = await stage.OpenAsync("/compare");
        await Expect(page.Locator("#answer")).ToContainTextAsync("Yes, it is better.", new() { Timeout = PatienceMs });
        await Expect(page.Locator("#answer")).ToContainTextAsync("90 % interval");
        await page.Locator("#left-title").ClickAsync();
        await Picture.KeepAsync(page, "compare-left-out");
        await Expect(page.Locator("#nights-title"))
            .ToHaveTextAsync(new Regex("Nights it rests on: 3 before, [34] after"));
        await Expect(page.Locator("#interval svg")).ToBeVisibleAsync();
        await Picture.KeepAsync(page, "compare-1280-day");
    }

    [Fact]
    public async Task Note_StaysText_AndUndatedRunsAreSaidToBe()
    {
        var page = await OpenAsync("/review?from=2026-05-18T14:00:00Z&to=2026-05-19T14:00:00Z");
        await Expect(page.Locator("#events")).ToContainTextAsync(RecordedWeek.HostileNote);
        await Expect(page.Locator("#undated")).ToContainTextAsync("Run 3: the clock was never known to be right");
        await Expect(page).ToHaveTitleAsync("Review");
        Assert.Equal(0, await page.Locator("#events img").CountAsync());
    }

    [Fact]
    public async Task Report_OpensFromItsFileWithoutANetwork()
    {
        var page = await OpenAsync(Week);
        var download = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Link, new() { Name = "Report", Exact = true }).ClickAsync());
        var file = await download.PathAsync() + ".html";
        await download.SaveAsAsync(file);
        var opened = await stage.OpenAsync(new Uri(file).ToString());
        await Expect(opened.Locator("h1")).ToHaveTextAsync("Hot water on a trip: touring");
        Assert.True(await opened.Locator("figure svg").CountAsync() >= 3);
        var chart = await opened.Locator("figure > svg").First.BoundingBoxAsync();
        Assert.True(chart!.Width > 600 && chart.Height > 150);
        await Expect(opened.Locator("body")).ToContainTextAsync(RecordedWeek.HostileNote);
        await Expect(opened).ToHaveTitleAsync("Hot water on a trip: touring");
        Assert.Equal(0, await opened.Locator("script, img, link").CountAsync());
        await Picture.KeepAsync(opened, "report");
        File.Delete(file);
    }

    [Fact]
    public async Task NotesAndChangeMarks_AreWrittenByAPairedPhoneOnly()
    {
        var page = await OpenAsync(Week);
        await Expect(page.Locator("#unpaired")).ToBeVisibleAsync();
        await Expect(page.Locator("#write")).ToBeHiddenAsync();
        await stage.PairAsync(page);
        await page.ReloadAsync();
        await page.GetByLabel("Note", new() { Exact = true }).FillAsync("a quiet lake");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the note" }).ClickAsync();
        await Expect(page.Locator("#written")).ToContainTextAsync("Taken with the next scan");
        await page.GetByLabel("Changed in the van").SelectOptionAsync("hoses");
        await page.GetByLabel("What was done").FillAsync("new clamps");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mark the change" }).ClickAsync();
        await Expect(page.GetByLabel("What was done")).ToHaveValueAsync("");
        Assert.Equal(
            [new PersonAction(ActionKind.Note, "", "a quiet lake"),
            new PersonAction(ActionKind.Changed, "hoses", "new clamps")],
            stage.Inbox.TakeAll());
    }

    [Theory]
    [MemberData(nameof(Screens.All), MemberType = typeof(Screens))]
    public async Task Axe_FindsNoSeriousFault_AndNothingIsWiderThanTheScreen(int width, int height)
    {
        foreach (var isNight in (bool[])[false, true])
        {
            foreach (var path in (string[])[Week, "/compare"])
            {
                var page = await stage.OpenAsync(path, Screens.Of(width, height, isNight));
                await Expect(page.Locator(path == "/compare" ? "#answer" : ".journeys button").First)
                    .Not.ToBeEmptyAsync(new() { Timeout = PatienceMs });
                await Picture.KeepAsync(page,
                    $"{(path == "/compare" ? "compare" : "review")}-{width}-{(isNight ? "night" : "day")}");
                var found = await page.RunAxe();
                Assert.NotEmpty(found.Passes);
                Assert.Empty(found.Violations.Where(v => v.Impact is "serious" or "critical").Select(v =>
                    $"{v.Id}: {v.Nodes[0].Html}"));
                Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
            }
        }
    }

    private async Task<IPage> OpenAsync(string path)
    {
        var page = await stage.OpenAsync(path);
        await Expect(page.Locator(".journeys button").First).ToBeVisibleAsync(new() { Timeout = PatienceMs });
        return page;
    }

    /// <summary>The span that the page shows, as its address tells it.</summary>
    private static (DateTimeOffset From, DateTimeOffset To) Span(IPage page)
    {
        var query = System.Web.HttpUtility.ParseQueryString(new Uri(page.Url).Query);
        DateTimeOffset At(string name) =>
            DateTimeOffset.Parse(query[name]!, System.Globalization.CultureInfo.InvariantCulture);
        return (At("from"), At("to"));
    }

    private static Task AwaitSpanAsync(IPage page, Func<(DateTimeOffset From, DateTimeOffset To), bool> isWanted) =>
        page.WaitForURLAsync(_ =>
            isWanted(Span(page)), new() { Timeout = PatienceMs, WaitUntil = WaitUntilState.Commit });
}
