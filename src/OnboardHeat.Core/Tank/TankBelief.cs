using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// What all hypotheses say together, each by its weight: means and deviations over all their members. Where they are
/// two different stories (cold below a lone probe, or none) a mean of both would be neither: then the likelier one
/// gives the figures, and ranges hold both.
/// </summary>
internal sealed class TankBelief(
    TankDescription tank, TankGeometry geometry, TankHypothesis[] hypotheses, bool tellsLikeliest)
{
    private const int N = TankGeometry.Layers;
    private const int Members = TankEnsemble.Members;

    /// <summary>The estimate that shows it.</summary>
    /// <param name="airCelsius">Air by the tank as read, °C.</param>
    /// <param name="readings">How many readings it rests on.</param>
    public TankEstimate Make(double airCelsius, int readings)
    {
        var layers = new double[N];
        for (var i = 0; i < N; i++)
        {
            layers[i] = Of(Row.Layer + i).Value;
        }

        var mean = MeanLayers();
        var storedJ = geometry.TotalJPerK * (mean.Value - tank.ColdSupplyCelsius);
        var heatingW = 0.0;
        foreach (var hypothesis in hypotheses)
        {
            heatingW += ToldWeight(hypothesis) * hypothesis.HeatingW;
        }

        return new TankEstimate
        {
            IsKnown = true,
            LayerCelsius = layers,
            TopCelsius = Of(Row.Layer + N - 1) with { Count = readings },
            MeanCelsius = mean with { Count = readings },
            BottomCelsius = Of(Row.Layer) with { Count = readings },
            StoredJ = mean with { Value = storedJ, Deviation = mean.Deviation * geometry.TotalJPerK, Count = readings },
            HeatingW = mean with { Value = heatingW, Deviation = 0.2 * Math.Abs(heatingW) },
            CoilWPerK = Of(Row.Coil),
            LossWPerK = Of(Row.Loss) with { Count = readings },
            SurroundingsCelsius = Of(Row.AirOffset) with { Value = airCelsius + Of(Row.AirOffset).Value },
        };
    }

    /// <summary>Mean of the water over all.</summary>
    public Estimate MeanLayers() => Spread(static (ensemble, means) =>
    {
        means.Clear();
        for (var i = 0; i < N; i++)
        {
            var layer = ensemble[Row.Layer + i];
            for (var m = 0; m < Members; m++)
            {
                means[m] += layer[m];
            }
        }

        foreach (ref var mean in means)
        {
            mean /= N;
        }
    });

    /// <summary>One row over all.</summary>
    public Estimate Of(int row)
    {
        var sums = default(WeightedSums);
        foreach (var hypothesis in hypotheses)
        {
            sums = sums.With(hypothesis.Ensemble[row], ToldWeight(hypothesis));
        }

        return sums.Estimate;
    }

    /// <summary>Mean and deviation of a figure over all members of all hypotheses, by their weights.</summary>
    /// <param name="figures">Works out the figure of every member of one ensemble.</param>
    public Estimate Spread(Action<TankEnsemble, Span<double>> figures)
    {
        Span<double> values = stackalloc double[Members];
        var sums = default(WeightedSums);
        foreach (var hypothesis in hypotheses)
        {
            figures(hypothesis.Ensemble, values);
            sums = sums.With(values, ToldWeight(hypothesis));
        }

        return sums.Estimate;
    }

    /// <summary>
    /// A figure with the ends of a range that holds it nine times in ten, over all members of all hypotheses.
    /// </summary>
    /// <param name="figures">Works out the figure of every member of one ensemble.</param>
    public (double Value, double Low, double High) Range(Action<TankEnsemble, Span<double>> figures)
    {
        Span<double> values = stackalloc double[hypotheses.Length * Members];
        Span<double> weights = stackalloc double[values.Length];
        var told = default(WeightedSums);
        for (var h = 0; h < hypotheses.Length; h++)
        {
            var own = values.Slice(h * Members, Members);
            figures(hypotheses[h].Ensemble, own);
            told = told.With(own, ToldWeight(hypotheses[h]));
            weights.Slice(h * Members, Members).Fill(hypotheses[h].Weight / Members);
        }

        values.Sort(weights, static (a, b) => a.CompareTo(b));
        return (told.Estimate.Value, Quantile(values, weights, 0.05), Quantile(values, weights, 0.95));
    }

    /// <summary>
    /// The figure below which so large a share of the weight lies; each figure stands in the middle of its own weight.
    /// </summary>
    private static double Quantile(ReadOnlySpan<double> sorted, ReadOnlySpan<double> weights, double share)
    {
        var (below, last) = (0.0, 0.0);
        for (var i = 0; i < sorted.Length; i++)
        {
            var at = below + (weights[i] / 2);
            if (at >= share)
            {
                return i == 0 ? sorted[0]
                    : sorted[i - 1] + ((share - last) / (at - last) * (sorted[i] - sorted[i - 1]));
            }

            (below, last) = (below + weights[i], at);
        }

        return sorted[^1];
    }

    private double ToldWeight(TankHypothesis hypothesis) =>
        !tellsLikeliest ? hypothesis.Weight : ReferenceEquals(hypothesis, hypotheses.MaxBy(h => h.Weight)) ? 1 : 0;
}
