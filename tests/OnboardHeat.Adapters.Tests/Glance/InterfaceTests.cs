using System.Text.Json;
using OnboardHeat.Core.Watch;
using OnboardHeat.Glance.Assets;

namespace OnboardHeat.Adapters.Tests.Glance;

public sealed class InterfaceTests
{
    // Issue figure: the glance with everything it loads, as sent.
    private const int MostBytes = 150 * 1024;

    [Fact]
    public async Task Description_NamesExactlyTheRoutesThereAre()
    {
        await using var page = await ServedPage.StartAsync();
        var described = JsonDocument.Parse(
            await page.Client.GetStringAsync("/api/v1/openapi.json")).RootElement.GetProperty("paths")
            .EnumerateObject().SelectMany(path => path.Value.EnumerateObject()
            .Select(m => $"{m.Name.ToUpperInvariant()} {path.Name}: {m.Value.GetProperty("summary")}"));
        var served = page.Server.Routes.Select(route => $"{route.Method} {route.Path}: {route.Summary}");
        Assert.Equal(served.Order(StringComparer.Ordinal), described.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void GlanceAndReview_WithAllTheyLoad_StayWithin150KB()
    {
        var assets = new PageAssets();

        // The description of the interface is for programs: no page loads it.
        var loaded = PageAssets.Names.Where(name => name != "openapi.json");
        var plain = loaded.Sum(name => assets.Find(name)!.Plain.Length);
        Assert.InRange(plain, 10_000, MostBytes);
    }

    [Fact]
    public void Pages_LoadNothingFromElsewhere_AndHoldNoScriptOfTheirOwn()
    {
        var assets = new PageAssets();
        foreach (var name in PageAssets.Names.Where(name => name.EndsWith(".html", StringComparison.Ordinal)))
        {
            var html = System.Text.Encoding.UTF8.GetString(assets.Find(name)!.Plain);
            Assert.DoesNotContain("http:", html);
            Assert.DoesNotContain("https:", html);
            Assert.DoesNotContain(" style=", html);
            Assert.DoesNotContain("<script>", html);
        }
    }

    [Fact]
    public void Glance_HasAPersonsWordsForEveryAlarm()
    {
        var script = System.Text.Encoding.UTF8.GetString(new PageAssets().Find("alarms.js")!.Plain);
        Assert.All(AlarmTable.Rows, row => Assert.Contains($"'{row.Name}': '", script));
    }

    [Fact]
    public async Task SameFileAskedAgain_AnswersThatItHasNotChanged()
    {
        await using var page = await ServedPage.StartAsync();
        using var first = await page.Client.GetAsync("/assets/glance.js");
        var again = page.Ask(HttpMethod.Get, "/assets/glance.js");
        again.Headers.TryAddWithoutValidation("If-None-Match", first.Headers.ETag!.Tag);
        using var second = await page.Client.SendAsync(again);
        Assert.Equal(System.Net.HttpStatusCode.NotModified, second.StatusCode);
    }
}
