using System.Globalization;

namespace OnboardHeat.Limits;

/// <summary>
/// Prints a figure beside what it has to reach; by hand it must be reached, on the CI's machines within three times.
/// </summary>
internal static class Verdict
{
    private static readonly double s_slack = Environment.GetEnvironmentVariable("CI") == "true" ? 3 : 1;

    public static int AtMost(string what, double figure, double limit, int seed)
    {
        var isHeld = figure <= limit * s_slack;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what}: {figure:0.###} (to reach {limit:0.###}, seed {seed}) {(isHeld ? "ok" : "MISSED")}"));
        return isHeld ? 0 : 1;
    }

    public static int None(string what, int count, int of, int seed)
    {
        Console.WriteLine($"{what}: {count} of {of} (to reach 0, seed {seed}) {(count == 0 ? "ok" : "MISSED")}");
        return count == 0 ? 0 : 1;
    }
}
