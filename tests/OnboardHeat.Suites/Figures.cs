using System.Globalization;

namespace OnboardHeat.Suites;

/// <summary>Quantiles and how figures are printed. A miss counts as endless.</summary>
internal static class Figures
{
    public static double Quantile(List<double> values, double share)
    {
        if (values.Count == 0)
        {
            return double.NaN;
        }

        values.Sort();
        return values[Math.Min(values.Count - 1, (int)(share * values.Count))];
    }

    public static string Seconds(double seconds) => double.IsNaN(seconds) ? "none"
        : double.IsPositiveInfinity(seconds) ? "never"
        : string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s");

    public static string Percent(int part, int whole) =>
        whole == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / whole:0.0} %");

    public static string Percent(double share) =>
        double.IsNaN(share) ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");
}
