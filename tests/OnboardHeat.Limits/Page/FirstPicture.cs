using Microsoft.Playwright;
using OnboardHeat.Browser.Tests.Support;

namespace OnboardHeat.Limits.Page;

/// <summary>
/// How long a browser that was never here takes from asking for the page to showing its first figures.
/// </summary>
internal static class FirstPicture
{
    private const int Tries = 5;

    public static async Task<double> MeasureMsAsync(Uri address)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Chromium.LaunchAsync(playwright);
        var tookMs = new List<double>();
        for (var i = 0; i < Tries; i++)
        {
            await using var phone = await browser.NewContextAsync();
            var page = await phone.NewPageAsync();
            await page.GotoAsync(address.ToString());
            // The page's own policy forbids what the library's waiting does, so it is asked again and again.
            while (!await page.EvaluateAsync<bool>("performance.getEntriesByName('first-picture').length > 0"))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, CancellationToken.None);
            }

            // From the browser's own clock: zero is when the navigation began.
            tookMs.Add(await page.EvaluateAsync<double>("performance.getEntriesByName('first-picture')[0].startTime"));
        }

        var culture = System.Globalization.CultureInfo.InvariantCulture;
        Console.WriteLine($"  {string.Join(", ", tookMs.Select(ms => ms.ToString("0", culture)))} ms");
        return tookMs.Order().ElementAt(Tries / 2);
    }
}
