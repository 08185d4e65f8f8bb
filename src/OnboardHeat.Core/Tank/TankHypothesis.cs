namespace OnboardHeat.Core.Tank;

/// <summary>
/// One ensemble that takes the bottom probe to touch a certain layer. Where it really sits nobody says, and it changes
/// by minutes what a draw looks like; so three hypotheses run side by side, and the readings weigh them.
/// </summary>
internal sealed class TankHypothesis
{
    private const int N = TankGeometry.Layers;
    private const int Members = TankEnsemble.Members;

    /// <summary>
    /// Rate of a tap in such a van, litres a minute, its spread, and the most (common practice, no source).
    /// </summary>
    private const double TapLPerMin = 4, TapSpreadLPerMin = 2, TapMostLPerMin = 15;

    /// <summary>
    /// How long a draw has been on when it is seen, s: the lag of the probe, and the way of the cold up to its layer.
    /// </summary>
    private const double SeenAfterS = 35, SeenAfterPerLayerS = 15;

    /// <summary>
    /// What the model cannot know of the layers, K for each square root of a minute: it keeps the filter listening.
    /// Lower layers, where coil, inlet and plate are, three times as much.
    /// </summary>
    private const double StirK = 0.003;

    /// <summary>Water this much warmer or colder than a probe is half out of its word, K.</summary>
    private const double SameWaterK = 2;

    /// <summary>
    /// What coolant carries that turns by itself, W/K, and its spread as a ratio: some 0.05 litres a minute (common
    /// practice, no source).
    /// </summary>
    private const double CirculationWPerK = 3, CirculationSpread = 0.6;

    private readonly TankGeometry _tank;
    private readonly EnsemblePrior _prior;
    private readonly EnsembleStep _step;
    private readonly int _bottomLayer;
    private readonly bool _hasUnseenCold;
    private long _steps;

    public TankHypothesis(TankGeometry tank, EnsemblePrior prior, int bottomLayer, bool hasUnseenCold = false)
    {
        _tank = tank;
        _prior = prior;
        _bottomLayer = bottomLayer;
        _hasUnseenCold = hasUnseenCold;
        _step = new EnsembleStep(Ensemble, tank, bottomLayer);
    }

    /// <summary>Its members.</summary>
    public TankEnsemble Ensemble { get; } = new();

    /// <summary>Its share of belief, 0 to 1.</summary>
    public double Weight { get; set; }

    /// <summary>Mean of its water, °C.</summary>
    public double MeanCelsius
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < N; i++)
            {
                sum += Ensemble.Mean(Row.Layer + i) / N;
            }

            return sum;
        }
    }

    /// <summary>Mean heat into the water in the last step, W.</summary>
    public double HeatingW { get; private set; }

    /// <summary>Begins anew from the readings, °C; unless only the layers have to, all else as well.</summary>
    public void Spread(double topCelsius, double bottomCelsius, bool knowsBottom)
    {
        if (_hasUnseenCold && !knowsBottom)
        {
            _prior.SpreadUnseenCold(Ensemble, topCelsius);
        }
        else
        {
            _prior.SpreadLayers(Ensemble, topCelsius, bottomCelsius, knowsBottom, _bottomLayer);
        }
    }

    /// <summary>Lets time pass.</summary>
    public void Pass(double stepS, in TankSurroundings around)
    {
        HeatingW = _step.Pass(stepS, around.AirCelsius, around.CoolantCelsius, around.IsElementOn);
        if (around.CirculatesFromCelsius is { } entering)
        {
            HeatingW -= _step.Circulate(stepS, entering);
        }

        if (around.DrawsFromCelsius is { } coldCelsius)
        {
            _step.Draw(stepS, coldCelsius);
        }

        Stir(stepS);
        _step.Mix();
        _step.Follow(stepS);
    }

    /// <summary>
    /// A draw is seen to begin: every member takes a rate of its own, and draws what had been drawn before it was seen.
    /// </summary>
    public void BeginDraw(double stepS, double coldCelsius)
    {
        var rates = Ensemble[Row.Draw];
        var scatter = FixedScatter.Normal(15);
        var seenAfterS = Math.Max(SeenAfterS, stepS) + (SeenAfterPerLayerS * _bottomLayer);
        for (var m = 0; m < Members; m++)
        {
            var lPerMin = Math.Clamp(TapLPerMin + (TapSpreadLPerMin * scatter[m]), 0.3, TapMostLPerMin);
            rates[m] = lPerMin / 60 / _tank.LayerLitres;
            _step.Draw(m, rates[m] * seenAfterS * (0.4 + (1.2 * FixedScatter.Uniform(18, m))), coldCelsius);
        }
    }

    /// <summary>Coolant is seen to turn by its own buoyancy: how fast, every member takes a guess of its own.</summary>
    public void BeginCirculation()
    {
        var scatter = FixedScatter.Normal(19);
        for (var m = 0; m < Members; m++)
        {
            Ensemble[Row.Circulation][m] = CirculationWPerK * Math.Exp(CirculationSpread * scatter[m]);
        }
    }

    /// <summary>It has ended.</summary>
    public void EndCirculation() => Ensemble[Row.Circulation].Clear();

    /// <summary>The draw has ended.</summary>
    public void EndDraw() => Ensemble[Row.Draw].Clear();

    /// <summary>What each member expects a tank probe to show, into the ensemble; the mean of it.</summary>
    public double Predict(int probe)
    {
        var metal = Ensemble[Row.Probe + probe];
        var common = Ensemble[Row.CommonOffset];
        var own = Ensemble[Row.Offset + probe];
        var sum = 0.0;
        for (var m = 0; m < Members; m++)
        {
            Ensemble.Predicted[m] = metal[m] + common[m] + own[m];
            sum += Ensemble.Predicted[m];
        }

        return sum / Members;
    }

    /// <summary>
    /// A probe speaks for the water that is as warm as what it touches: that is mixed with it, or was. Beyond a front
    /// it says nothing, whatever a small ensemble makes of it, except while a draw moves the front.
    /// </summary>
    public void Weigh(int probe, bool isDrawing, Span<double> weights)
    {
        if (isDrawing)
        {
            weights.Fill(1);
            return;
        }

        var here = Ensemble.Mean(Row.Probe + probe);
        for (var i = 0; i < weights.Length; i++)
        {
            var apart = (Ensemble.Mean(Row.Layer + i) - here) / SameWaterK;
            weights[i] = 1 / (1 + (apart * apart));
        }
    }

    /// <summary>
    /// What all tank probes share is no offset of one of them: the own offsets of the fitted probes, each by how much
    /// its word counts, sum to nothing in every member.
    /// </summary>
    public void KeepOffsetsApart(ReadOnlySpan<bool> isTankProbe)
    {
        var weights = 0.0;
        for (var p = 0; p < 3; p++)
        {
            weights += isTankProbe[p] ? EnsemblePrior.OffsetWeight(p) : 0;
        }

        for (var m = 0; m < Members; m++)
        {
            var sum = 0.0;
            for (var p = 0; p < 3; p++)
            {
                sum += isTankProbe[p] ? EnsemblePrior.OffsetWeight(p) * Ensemble[Row.Offset + p][m] : 0;
            }

            for (var p = 0; p < 3; p++)
            {
                Ensemble[Row.Offset + p][m] -= sum / weights;
            }
        }
    }

    /// <summary>After readings: bounds that no member may leave, and what may never be too sure.</summary>
    public void KeepWithinBounds(bool isDrawing)
    {
        if (isDrawing)
        {
            var perLPerMin = 1 / 60.0 / _tank.LayerLitres;
            KeepOpen(Row.Draw, 0.4 * perLPerMin);
            Ensemble.Clamp(Row.Draw, 0, TapMostLPerMin * perLPerMin);
        }

        Ensemble.Clamp(Row.Loss, 0.02, 20);
        Ensemble.Clamp(Row.Coil, 15, 150);
        Ensemble.Clamp(Row.CoilFoot, 0, 1);
        Ensemble.Clamp(Row.CoilReach, 2, N);
        Ensemble.Clamp(Row.CoolantGain, 0.98, 1.15);
        Ensemble.Clamp(Row.Element, 0, 5000);
        Ensemble.Clamp(Row.Circulation, 0, 20);
        KeepOpen(Row.Coil, 0.08 * Ensemble.Mean(Row.Coil));
        KeepOpen(Row.CoilReach, 0.4);
        KeepOpen(Row.CoilFoot, 0.1);
        KeepOpen(Row.CoolantGain, 0.01);
        KeepOpen(Row.Loss, 0.01 * Ensemble.Mean(Row.Loss));
        for (var p = 0; p < 3; p++)
        {
            KeepOpen(Row.Lag + p, 4);
            KeepOpen(Row.Offset + p, 0.05);
            HoldOffset(Row.Offset + p, 2 * EnsemblePrior.OffsetOf(p));
            Ensemble.Clamp(Row.Lag + p, 8, 100);
            Ensemble.Clamp(Row.Offset + p, -3 * EnsemblePrior.OffsetOf(p), 3 * EnsemblePrior.OffsetOf(p));
        }

        _step.Mix();
    }

    /// <summary>What may change, or what the model has only roughly, never grows surer than this.</summary>
    private void KeepOpen(int row, double leastDeviation)
    {
        var deviation = Ensemble.Deviation(row);
        if (deviation < leastDeviation && deviation > 0)
        {
            Ensemble.Widen(row, Math.Min(1.05, leastDeviation / deviation));
        }
    }

    /// <summary>
    /// An offset beyond what a probe's data sheet allows is more likely the model's fault: its mean is held within two
    /// deviations.
    /// </summary>
    private void HoldOffset(int row, double mostK)
    {
        var mean = Ensemble.Mean(row);
        var beyond = mean - Math.Clamp(mean, -mostK, mostK);
        if (beyond != 0)
        {
            foreach (ref var value in Ensemble[row])
            {
                value -= beyond;
            }
        }
    }

    private void Stir(double stepS)
    {
        var size = StirK * Math.Sqrt(stepS / 60);
        var all = FixedScatter.Noise(++_steps, out var allSign);
        var low = FixedScatter.Noise(_steps + 1_000_000, out var lowSign);
        for (var i = 0; i < N; i++)
        {
            var row = Ensemble[Row.Layer + i];
            var lowSize = i < 3 ? 1 * size * lowSign : 0;
            for (var m = 0; m < Members; m++)
            {
                row[m] += (size * allSign * all[m]) + (lowSize * low[m]);
            }
        }
    }
}
