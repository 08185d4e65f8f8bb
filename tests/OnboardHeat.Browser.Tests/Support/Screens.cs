using Microsoft.Playwright;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>The screens that the page is made for, with the size of one of their CSS pixels.</summary>
internal static class Screens
{
    public static ViewportSize Phone { get; } = new() { Width = 360, Height = 740 };

    public static ViewportSize SevenInches { get; } = new() { Width = 800, Height = 480 };

    public static ViewportSize TenInches { get; } = new() { Width = 1280, Height = 800 };

    public static TheoryData<int, int> All => new() { { 360, 740 }, { 800, 480 }, { 1280, 800 } };

    /// <summary>
    /// Millimetres: a phone of 360 px is some 67 mm wide; a diagonal of 7 inches over 933 px; 10.1 inches over 1509 px.
    /// </summary>
    public static double PixelMm(int width) =>
        width switch { 360 => 67.0 / 360, 800 => 7 * 25.4 / 933, _ => 10.1 * 25.4 / 1509 };

    public static BrowserNewContextOptions Of(int width, int height, bool isNight) => new()
    {
        ViewportSize = new ViewportSize { Width = width, Height = height },
        ColorScheme = isNight ? ColorScheme.Dark : ColorScheme.Light,
    };
}
