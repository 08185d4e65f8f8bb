using Microsoft.Playwright;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>Debian's chromium, shut off from everything but this machine.</summary>
internal static class Chromium
{
    private static readonly string[] s_arguments =
    [
        "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(
        new BrowserTypeLaunchOptions { ExecutablePath = "/usr/bin/chromium", Args = s_arguments });
}
