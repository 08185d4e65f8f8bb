using System.Globalization;
using System.Text.Json;

namespace OnboardHeat.Daemon.Tests.Replaying;

/// <summary>
/// Compares lines with their golden. Figures may differ by what exp and log differ between processors; alarms, their
/// times and words may not.
/// </summary>
internal static class GoldenLines
{
    /// <summary>Largest differences: 0.1 W, 0.01 min (and as much of a forecast time), 0.001 kWh and W/K.</summary>
    private const double FigureSlack = 0.001, MinutesSlack = 0.01, WattsSlack = 0.1;

    /// <summary>Every difference, a line each.</summary>
    public static IReadOnlyList<string> Differences(string[] golden, string[] lines)
    {
        var differences = new List<string>();
        for (var i = 0; i < Math.Max(golden.Length, lines.Length); i++)
        {
            if (i >= golden.Length || i >= lines.Length)
            {
                differences.Add(
                    i >= lines.Length ? $"line {i + 1} is missing: {golden[i]}" : $"line {i + 1} is new: {lines[i]}");
                continue;
            }

            using var expected = JsonDocument.Parse(golden[i]);
            using var actual = JsonDocument.Parse(lines[i]);
            Compare(i + 1, expected.RootElement, actual.RootElement, differences);
        }

        return differences;
    }

    private static void Compare(int line, JsonElement expected, JsonElement actual, List<string> into)
    {
        var names = expected.EnumerateObject().Select(p => p.Name).Union(actual.EnumerateObject().Select(p => p.Name));
        foreach (var name in names)
        {
            var was = expected.TryGetProperty(name, out var e) ? e.GetRawText() : "nothing";
            var got = actual.TryGetProperty(name, out var a) ? a.GetRawText() : "nothing";
            if (was != got && !IsClose(name, e, a))
            {
                into.Add($"line {line} at {actual.GetProperty("elapsedS")} s, {name}: was {was}, is {got}");
            }
        }
    }

    private static bool IsClose(string name, JsonElement expected, JsonElement actual)
    {
        if (name is "elapsedS" or "run" or "v")
        {
            return false;
        }

        if (expected.ValueKind == JsonValueKind.Number && actual.ValueKind == JsonValueKind.Number)
        {
            var slack = name.Contains("Minutes", StringComparison.Ordinal) ? MinutesSlack
                : name.EndsWith("Watts", StringComparison.Ordinal) ? WattsSlack : FigureSlack;
            return Math.Abs(expected.GetDouble() - actual.GetDouble()) <= slack * 1.0001;
        }

        return name is "readyAt" or "usableUntil"
            && expected.ValueKind == JsonValueKind.String && actual.ValueKind == JsonValueKind.String
            && (Time(expected) - Time(actual)).Duration() <= TimeSpan.FromMinutes(MinutesSlack);
    }

    private static DateTimeOffset Time(JsonElement element) =>
        DateTimeOffset.Parse(element.GetString()!, CultureInfo.InvariantCulture);
}
