using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Thirty-two whole tanks side by side, each with its own idea of layers, probes, loss and coil, that together say how
/// sure the estimate is. A reading moves them all by their sample covariance: the ensemble square-root filter (Whitaker
/// and Hamill 2002, Monthly Weather Review 130:1913), one reading at a time, no random numbers. Sums run in a fixed
/// order, so that every machine gets the same digits.
/// </summary>
internal sealed class TankEnsemble
{
    /// <summary>
    /// Number of members; a multiple of four. Fewer than 30 mislead by chance correlations among some ten unknowns.
    /// </summary>
    public const int Members = 32;

    private const int Wide = Members / 4;

    private readonly double[] _rows = new double[Row.Count * Members];
    private readonly double[] _predicted = new double[Members];

    /// <summary>One row: what every member believes of one thing.</summary>
    public Span<double> this[int row] => _rows.AsSpan(row * Members, Members);

    /// <summary>What a probe is expected to show, filled by the caller before <see cref="Assimilate"/>.</summary>
    public Span<double> Predicted => _predicted;

    /// <summary>Mean over the members.</summary>
    public double Mean(int row) => MeanOf(this[row]);

    /// <summary>Standard deviation over the members.</summary>
    public double Deviation(int row) => Math.Sqrt(VarianceOf(this[row]));

    /// <summary>Copies one member's layers, bottom first.</summary>
    public void CopyLayers(int member, Span<double> layers)
    {
        for (var i = 0; i < TankGeometry.Layers; i++)
        {
            layers[i] = _rows[((Row.Layer + i) * Members) + member];
        }
    }

    /// <summary>Puts one member's layers back.</summary>
    public void SetLayers(int member, ReadOnlySpan<double> layers)
    {
        for (var i = 0; i < TankGeometry.Layers; i++)
        {
            _rows[((Row.Layer + i) * Members) + member] = layers[i];
        }
    }

    /// <summary>
    /// Takes one reading: moves every row of the set by its covariance with <see cref="Predicted"/>.
    /// </summary>
    /// <param name="reading">What was read.</param>
    /// <param name="variance">Variance of the reading about what a perfect member would predict.</param>
    /// <param name="clipDeviations">
    /// A reading further off than so many deviations counts as that far off: one odd reading moves little.
    /// </param>
    /// <param name="rows">Rows that this reading may teach.</param>
    /// <param name="weights">How much of the covariance counts for each layer, 0 to 1.</param>
    /// <param name="total">Variance of the reading about the mean prediction, the members' spread included.</param>
    /// <returns>
    /// How far the reading was off, in deviations, before clipping; positive when it was higher than expected.
    /// </returns>
    public double Assimilate(
        double reading, double variance, double clipDeviations, ReadOnlySpan<int> rows, ReadOnlySpan<double> weights,
        out double total)
    {
        var predicted = MemoryMarshal.Cast<double, Vector256<double>>(_predicted.AsSpan());
        var mean = MeanOf(_predicted);
        var meanWide = Vector256.Create(mean);
        for (var k = 0; k < Wide; k++)
        {
            predicted[k] -= meanWide;
        }

        var spread = DotOf(predicted, predicted) / (Members - 1);
        total = spread + variance;
        var deviation = Math.Sqrt(total);
        var off = (reading - mean) / deviation;
        var step = Math.Clamp(off, -clipDeviations, clipDeviations) * deviation / total;
        var shrink = 1 / (1 + Math.Sqrt(variance / total)) / total;
        foreach (var row in rows)
        {
            var values = MemoryMarshal.Cast<double, Vector256<double>>(this[row]);
            var covariance = DotOf(values, predicted) / (Members - 1);
            covariance *= row < weights.Length ? weights[row] : 1;
            var shift = Vector256.Create(covariance * step);
            var pull = Vector256.Create(covariance * shrink);
            for (var k = 0; k < Wide; k++)
            {
                values[k] += shift - (pull * predicted[k]);
            }
        }

        return off;
    }

    /// <summary>Widens a row about its mean by a factor.</summary>
    public void Widen(int row, double factor)
    {
        var mean = Mean(row);
        foreach (ref var value in this[row])
        {
            value = mean + ((value - mean) * factor);
        }
    }

    /// <summary>Keeps a row within bounds that no member may leave.</summary>
    public void Clamp(int row, double low, double high)
    {
        foreach (ref var value in this[row])
        {
            value = Math.Clamp(value, low, high);
        }
    }

    private static double MeanOf(ReadOnlySpan<double> values)
    {
        var sum = Vector256<double>.Zero;
        foreach (var four in MemoryMarshal.Cast<double, Vector256<double>>(values))
        {
            sum += four;
        }

        return SumOf(sum) / Members;
    }

    private static double VarianceOf(ReadOnlySpan<double> values)
    {
        var mean = Vector256.Create(MeanOf(values));
        var sum = Vector256<double>.Zero;
        foreach (var four in MemoryMarshal.Cast<double, Vector256<double>>(values))
        {
            var off = four - mean;
            sum += off * off;
        }

        return SumOf(sum) / (Members - 1);
    }

    private static double DotOf(ReadOnlySpan<Vector256<double>> a, ReadOnlySpan<Vector256<double>> b)
    {
        var sum = Vector256<double>.Zero;
        for (var k = 0; k < Wide; k++)
        {
            sum += a[k] * b[k];
        }

        return SumOf(sum);
    }

    private static double SumOf(Vector256<double> four) => (four[0] + four[1]) + (four[2] + four[3]);
}
