using Microsoft.Playwright;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>Keeps what a screen shows, for people to look at: <c>ONBOARDHEAT_SHOTS</c> names the folder.</summary>
internal static class Picture
{
    public static async Task KeepAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("ONBOARDHEAT_SHOTS") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png") });
        }
    }
}
