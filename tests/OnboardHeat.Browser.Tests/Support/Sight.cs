using System.Text.Json;
using Microsoft.Playwright;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>What a reader of a page meets, worked out in the browser itself.</summary>
internal static class Sight
{
    private static readonly string s_script = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "look.js"));

    public static async Task<IReadOnlyList<JsonElement>> TextsAsync(IPage page) => await AskAsync(page, "look.texts()");

    public static async Task<IReadOnlyList<JsonElement>> MarksAsync(IPage page) => await AskAsync(page, "look.marks()");

    public static async Task<IReadOnlyList<JsonElement>> FlashingAsync(IPage page) =>
        await AskAsync(page, "look.flashing()");

    public static async Task<double> ContrastAsync(IPage page, string colours)
    {
        await page.EvaluateAsync(s_script);
        return await page.EvaluateAsync<double>($"look.contrast({colours})");
    }

    private static async Task<IReadOnlyList<JsonElement>> AskAsync(IPage page, string question)
    {
        await page.EvaluateAsync(s_script);
        return [.. (await page.EvaluateAsync(question))!.Value.EnumerateArray()];
    }
}
