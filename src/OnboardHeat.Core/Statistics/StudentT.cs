namespace OnboardHeat.Core.Statistics;

/// <summary>
/// Student's t distribution for any number of degrees of freedom, whole or not. Its integral is half a regularised
/// incomplete beta function (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 and 26.5.27).
/// </summary>
internal static class StudentT
{
    /// <summary>Terms of the continued fraction at most; it settles within a few tens where it is used.</summary>
    private const int MostTerms = 300;

    /// <summary>Relative change of the continued fraction at which it has settled.</summary>
    private const double Settled = 1e-14;

    /// <summary>The value that a share of the distribution lies below.</summary>
    /// <param name="share">0.5 to 1, ends excluded.</param>
    /// <param name="freedom">Degrees of freedom; 0.5 or more.</param>
    public static double Quantile(double share, double freedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(share, 0.5);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(share, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(freedom, 0.5);
        var (low, high) = (0.0, 1.0);
        while (Below(high, freedom) < share)
        {
            high *= 2;
        }

        // Halving is slow and cannot fail; a comparison asks once.
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle, freedom) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Share of the distribution below a value of zero or more.</summary>
    public static double Below(double t, double freedom) =>
        1 - (0.5 * IncompleteBeta(freedom / (freedom + (t * t)), freedom / 2, 0.5));

    private static double IncompleteBeta(double x, double a, double b)
    {
        if (x is <= 0 or >= 1)
        {
            return x <= 0 ? 0 : 1;
        }

        var front = Math.Exp(LogGamma(a + b) - LogGamma(a) - LogGamma(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x)));

        // The fraction settles quickly on one side of the peak only; on the other the complement is taken.
        return x < (a + 1) / (a + b + 2) ? front * Fraction(x, a, b) / a : 1 - (front * Fraction(1 - x, b, a) / b);
    }

    /// <summary>
    /// The continued fraction of the incomplete beta function (DLMF 8.17.22), evaluated from its front.
    /// </summary>
    private static double Fraction(double x, double a, double b)
    {
        var c = 1.0;
        var d = 1 / NotZero(1 - ((a + b) * x / (a + 1)));
        var fraction = d;
        for (var m = 1; m <= MostTerms; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            fraction *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            fraction *= d * c;
            if (Math.Abs((d * c) - 1) < Settled)
            {
                break;
            }
        }

        return fraction;
    }

    private static double NotZero(double value) => Math.Abs(value) < 1e-300 ? 1e-300 : value;

    /// <summary>
    /// Logarithm of the gamma function by Stirling's series (DLMF 5.11.1), carried up to where that is exact enough.
    /// </summary>
    private static double LogGamma(double x)
    {
        var product = 1.0;
        while (x < 12)
        {
            product *= x;
            x++;
        }

        var inverse = 1 / (x * x);
        var series =
            ((((1.0 / 1188 * inverse) - (1.0 / 1680)) * inverse + (1.0 / 1260)) * inverse - (1.0 / 360)) * inverse
            + (1.0 / 12);
        return ((x - 0.5) * Math.Log(x)) - x + (0.5 * Math.Log(2 * Math.PI)) + (series / x) - Math.Log(product);
    }
}
