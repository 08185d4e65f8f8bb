namespace OnboardHeat.Core.Tank;

/// <summary>
/// Fixed numbers to spread an ensemble with: for each row of unknowns one number a member, mean 0, deviation 1,
/// near-normal, and every two rows exactly uncorrelated (Gram-Schmidt), so that the filter begins without accidental
/// beliefs. The same in every run: nothing is random.
/// </summary>
internal static class FixedScatter
{
    private const int Members = TankEnsemble.Members;

    private static readonly double[][] s_rows = Make(24, 0x9E3779B97F4A7C15UL, areUncorrelated: true);
    private static readonly double[][] s_noise = Make(64, 0xD1B54A32D192ED03UL, areUncorrelated: false);

    /// <summary>Numbers with mean 0 and deviation 1; different for each index, 0 to 23.</summary>
    public static ReadOnlySpan<double> Normal(int index) => s_rows[index];

    /// <summary>
    /// Numbers to stir an ensemble with at its n-th step, mean 0, deviation 1: one of 64 rows, with a sign of its own,
    /// so that no belief grows out of their repetition.
    /// </summary>
    public static ReadOnlySpan<double> Noise(long step, out int sign)
    {
        var state = (ulong)step * 0x9E3779B97F4A7C15UL;
        var number = NextUniform(ref state);
        sign = number < 0.5 ? -1 : 1;
        return s_noise[(int)(number * 2 * s_noise.Length) % s_noise.Length];
    }

    /// <summary>The same between 0 and 1, near-uniform: each number's rank among its row.</summary>
    public static double Uniform(int index, int member)
    {
        var row = s_rows[index];
        var below = 0;
        foreach (var other in row)
        {
            below += other < row[member] ? 1 : 0;
        }

        return (below + 0.5) / Members;
    }

    private static double[][] Make(int count, ulong state, bool areUncorrelated)
    {
        var rows = new double[count][];
        for (var r = 0; r < count; r++)
        {
            var row = new double[Members];
            for (var m = 0; m < Members; m++)
            {
                // The sum of twelve uniform numbers less six is near-normal, with tails that end at six deviations.
                for (var i = 0; i < 12; i++)
                {
                    row[m] += NextUniform(ref state);
                }

                row[m] -= 6;
            }

            Centre(row);
            for (var earlier = 0; earlier < r && areUncorrelated; earlier++)
            {
                var along = Dot(row, rows[earlier]) / (Members - 1);
                for (var m = 0; m < Members; m++)
                {
                    row[m] -= along * rows[earlier][m];
                }
            }

            var scale = 1 / Math.Sqrt(Dot(row, row) / (Members - 1));
            for (var m = 0; m < Members; m++)
            {
                row[m] *= scale;
            }

            rows[r] = row;
        }

        return rows;
    }

    private static void Centre(double[] row)
    {
        var mean = row.Average();
        for (var m = 0; m < row.Length; m++)
        {
            row[m] -= mean;
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var m = 0; m < a.Length; m++)
        {
            sum += a[m] * b[m];
        }

        return sum;
    }

    /// <summary>SplitMix64 (Steele, Lea and Flood 2014): the upper 53 bits as a number from 0 to 1.</summary>
    private static double NextUniform(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
