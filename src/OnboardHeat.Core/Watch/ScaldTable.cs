namespace OnboardHeat.Core.Watch;

/// <summary>
/// How long water takes to burn the skin of an adult to the second degree (after Moritz and Henriques 1947, as printed
/// by a public information page). Children and old people burn sooner.
/// </summary>
internal static class ScaldTable
{
    private static readonly (double Celsius, string Time)[] s_rows =
    [
        (60, "3 seconds"), (55, "17 seconds"), (51, "2 minutes"), (49, "8 minutes"), (48, "15 minutes"),
        (47, "20 minutes"),
        (45, "2 hours"),
    ];

    /// <summary>Time of the hottest row that is not above the temperature; null below 45 °C.</summary>
    public static string? TimeAt(double celsius)
    {
        foreach (var (rowCelsius, time) in s_rows)
        {
            if (celsius >= rowCelsius)
            {
                return time;
            }
        }

        return null;
    }
}
