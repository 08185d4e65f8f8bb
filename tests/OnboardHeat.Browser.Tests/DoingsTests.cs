using Microsoft.Playwright;
using OnboardHeat.Browser.Tests.Support;
using static Microsoft.Playwright.Assertions;

namespace OnboardHeat.Browser.Tests;

/// <summary>What a person did to the van, told by a paired phone: works on the circuit, draining.</summary>
public sealed class DoingsTests(CalmStage stage) : IClassFixture<CalmStage>, IAsyncLifetime
{
    private const float PatienceMs = 20_000;

    public Task InitializeAsync() => Task.CompletedTask;

    public Task DisposeAsync() => stage.PutAwayAsync();

    [Fact]
    public async Task WorksBegunAndEndedOnThePage_ShowOnIt_AndAskWhatWasChanged()
    {
        var page = await stage.OpenAsync();
        await stage.PairAsync(page);
        await page.Locator("#doings summary").ClickAsync();
        var begin = page.Locator("#doings-buttons button").First;
        await Expect(begin).ToHaveTextAsync("Begin works on the circuit");
        await begin.ClickAsync();
        await Expect(begin).ToContainTextAsync("tap again");
        await Expect(page.Locator("#works")).ToBeHiddenAsync();
        await Picture.KeepAsync(page, "doings");
        await begin.ClickAsync();

        await Expect(page.Locator("#works")).ToContainTextAsync("it is not watched", new() { Timeout = PatienceMs });
        var end = page.GetByRole(AriaRole.Button, new() { Name = "Works have ended" });
        await end.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Works have ended: tap again" }).ClickAsync();

        await Expect(page.Locator("#works")).ToContainTextAsync("What was changed", new() { Timeout = PatienceMs });
        await Picture.KeepAsync(page, "doings-asked");
        await page.GetByRole(AriaRole.Button, new() { Name = "Changed: hoses" }).ClickAsync();
        await Expect(page.Locator("#works")).ToBeHiddenAsync(new() { Timeout = PatienceMs });
        Assert.Empty(stage.Faults);
    }
}
