using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// What all hypotheses say together, each by its weight: means and deviations over all their members.
/// </summary>
internal sealed class TankBelief(TankDescription tank, TankGeometry geometry, TankHypothesis[] hypotheses)
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
            heatingW += hypothesis.Weight * hypothesis.HeatingW;
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
    public Estimate MeanLayers() => Spread(static (ensemble, m) =>
    {
        var sum = 0.0;
        for (var i = 0; i < N; i++)
        {
            sum += ensemble[Row.Layer + i][m];
        }

        return sum / N;
    });

    /// <summary>One row over all.</summary>
    public Estimate Of(int row) => Spread((ensemble, m) => ensemble[row][m]);

    /// <summary>Mean and deviation of a figure over all members of all hypotheses, by their weights.</summary>
    public Estimate Spread(Func<TankEnsemble, int, double> figure)
    {
        double sum = 0, squares = 0, weights = 0;
        foreach (var hypothesis in hypotheses)
        {
            for (var m = 0; m < Members; m++)
            {
                var value = figure(hypothesis.Ensemble, m);
                sum += hypothesis.Weight * value;
                squares += hypothesis.Weight * value * value;
                weights += hypothesis.Weight;
            }
        }

        var mean = sum / weights;
        return new Estimate(mean, Math.Sqrt(Math.Max(0, (squares / weights) - (mean * mean))), TimeSpan.Zero, 0);
    }
}
