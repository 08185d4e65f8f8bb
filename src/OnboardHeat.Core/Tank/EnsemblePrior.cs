using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>What is believed before the first reading: of any van, or of this one as far as it was learnt.</summary>
internal sealed class EnsemblePrior(TankDescription tank, LearntTank learnt, Estimate? learntCoilWPerK)
{
    /// <summary>
    /// Deviation of a probe's offset, K: its data sheet's half kelvin is near the limit, and clamping adds some.
    /// </summary>
    public const double OffsetK = 0.3;

    /// <summary>
    /// The same of the bottom probe: where the bottom's cold ends and what plate, fittings and coil make of it is not
    /// known to half a kelvin, and shows as an offset of that probe alone.
    /// </summary>
    private const double BottomOffsetK = 0.6;

    /// <summary>
    /// Loss of a small lagged tank for each litre to the two thirds, W/K (check: 0.9 W/K at 20 litres), and its spread
    /// as a ratio.
    /// </summary>
    private const double LossAtOneLitreWPerK = 0.12, LossSpread = 0.35;

    /// <summary>
    /// Coil of such a tank, W/K, and its spread as a ratio (30 to 75 W/K; common practice, no source).
    /// </summary>
    private const double CoilWPerK = 50, CoilSpread = 0.27;

    /// <summary>Lag of a probe clamped on metal, s, and its spread as a ratio.</summary>
    private const double LagS = 35, LagSpread = 0.5;

    /// <summary>Element of a small tank, W, and its spread as a ratio (150 W at 12 V to 1.5 kW on a hook-up).</summary>
    private const double ElementW = 600, ElementSpread = 0.5;

    /// <summary>Air beside a tank without an air probe, °C, and its deviation, K.</summary>
    public const double AirStandInCelsius = 15;

    private const double AirUnknownK = 8;

    /// <summary>Loss that is usual for such a tank, W/K.</summary>
    public double TypicalLossWPerK => LossAtOneLitreWPerK * Math.Pow(tank.VolumeLitres, 2.0 / 3);

    /// <summary>
    /// Begins one thing anew in every hypothesis, as of any van: the loss, the coil or the probes' own offsets.
    /// </summary>
    public void Respread(TankHypothesis[] hypotheses, int row)
    {
        foreach (var hypothesis in hypotheses)
        {
            var ensemble = hypothesis.Ensemble;
            switch (row)
            {
                case Row.Loss:
                    Ratio(ensemble[Row.Loss], 0, null, TypicalLossWPerK, LossSpread);
                    break;
                case Row.Coil:
                    Ratio(ensemble[Row.Coil], 1, null, CoilWPerK, CoilSpread);
                    break;
                case Row.Offset:
                    for (var p = 0; p < 3; p++)
                    {
                        Plain(ensemble[Row.Offset + p], 3 + p, 0, OffsetOf(p));
                    }

                    break;
            }
        }
    }

    /// <summary>Deviation of the offset of the top, middle and bottom probe (0, 1, 2), K.</summary>
    public static double OffsetOf(int probe) => probe == 2 ? BottomOffsetK : OffsetK;

    /// <summary>How much such a probe's word counts beside the others'.</summary>
    public static double OffsetWeight(int probe) => 1 / (OffsetOf(probe) * OffsetOf(probe));

    /// <summary>Spreads everything but the layers.</summary>
    public void Spread(TankEnsemble ensemble, bool hasAir, ReadOnlySpan<bool> isTankProbe)
    {
        Ratio(ensemble[Row.Loss], 0, learnt.LossWPerK, TypicalLossWPerK, LossSpread);
        Ratio(ensemble[Row.Coil], 1, learntCoilWPerK, CoilWPerK, CoilSpread);
        Ratio(ensemble[Row.Element], 2, null, ElementW, ElementSpread);
        for (var p = 0; p < 3; p++)
        {
            Plain(ensemble[Row.Offset + p], 3 + p, 0, OffsetOf(p));
            Ratio(ensemble[Row.Lag + p], 6 + p, null, LagS, LagSpread);
        }

        Plain(ensemble[Row.CommonOffset], 16, 0, CommonOffsetK(isTankProbe));
        Plain(ensemble[Row.AirOffset], 9, 0, hasAir ? OffsetK : AirUnknownK);
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            ensemble[Row.CoilFoot][m] = 1.0 * FixedScatter.Uniform(17, m);
        }

        Between(ensemble[Row.CoilReach], 10, 3, TankGeometry.Layers);
        Between(ensemble[Row.CoolantGain], 11, 1.01, 1.11);
        ensemble[Row.Draw].Clear();
    }

    /// <summary>Deviation of what all fitted probes together show too much, K.</summary>
    private static double CommonOffsetK(ReadOnlySpan<bool> isTankProbe)
    {
        var weights = 0.0;
        for (var p = 0; p < isTankProbe.Length; p++)
        {
            weights += isTankProbe[p] ? OffsetWeight(p) : 0;
        }

        return weights > 0 ? 1 / Math.Sqrt(weights) : OffsetK;
    }

    /// <summary>
    /// Spreads the layers as after a draw that no probe has seen: hot at the top as read (°C), and below a front
    /// somewhere cold water that has warmed a little.
    /// </summary>
    public void SpreadUnseenCold(TankEnsemble ensemble, double topCelsius)
    {
        SpreadLayers(
            ensemble, topCelsius, tank.ColdSupplyCelsius + (UnseenWarmerK / 2), knowsBottom: true, bottomLayer: 0);
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            var hot = ensemble[Row.Layer + TankGeometry.Layers - 1][m];
            var cold = tank.ColdSupplyCelsius + (UnseenWarmerK / 2);
            var otherCold = Math.Min(hot, tank.ColdSupplyCelsius + (UnseenWarmerK * FixedScatter.Uniform(20, m)));
            for (var i = 0; i < TankGeometry.Layers; i++)
            {
                ref var layer = ref ensemble[Row.Layer + i][m];
                layer = hot - ((hot - layer) * (hot - otherCold) / Math.Max(1, hot - cold));
            }
        }
    }

    /// <summary>
    /// Spreads the layers between what bottom and top read (°C, offsets and all). Where they differ, nobody knows yet
    /// how high the cold reaches: every bottomLayer is as likely, with a front from sharp to smeared.
    /// </summary>
    public void SpreadLayers(
        TankEnsemble ensemble, double topCelsius, double bottomCelsius, bool knowsBottom, int bottomLayer)
    {
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            var common = ensemble[Row.CommonOffset][m];
            var top = topCelsius - common - ensemble[Row.Offset][m];
            var bottom = knowsBottom ? bottomCelsius - common - ensemble[Row.Offset + 2][m] : top;
            if (bottom > top - SameK)
            {
                var mean = knowsBottom ? 0.5 * (top + bottom) : top;
                (top, bottom) = (mean + 0.05, mean - 0.05);
            }

            // The front lies somewhere above the bottom probe; the profile passes through both readings.
            var last = TankGeometry.Layers - 1;
            var front = bottomLayer + FrontFrom + ((FrontTo - FrontFrom - bottomLayer) * FixedScatter.Uniform(13, m));
            var smear = Math.Min(0.2 * Math.Pow(6, FixedScatter.Uniform(14, m)), 0.5 * (front - bottomLayer));
            double Share(double at) => 1 / (1 + Math.Exp(-(at - front) / smear));
            var (low, high) = (Share(bottomLayer), Share(last));
            for (var i = 0; i < TankGeometry.Layers; i++)
            {
                var share = Math.Clamp((Share(i) - low) / (high - low), 0, 1);
                ensemble[Row.Layer + i][m] = bottom + ((top - bottom) * share);
            }

            ensemble[Row.Probe][m] = topCelsius - common - ensemble[Row.Offset][m];
            ensemble[Row.Probe + 2][m] = bottomCelsius - common - ensemble[Row.Offset + 2][m];
            ensemble[Row.Probe + 1][m] = 0.5 * (ensemble[Row.Layer + 5][m] + ensemble[Row.Layer + 6][m]);
        }
    }

    /// <summary>
    /// Where the front may lie: how far above the bottom probe at least, and how far from the bottom at most, in
    /// layers. Who draws more than two thirds of the tank draws till the top is cold too.
    /// </summary>
    private const double FrontFrom = 0.3, FrontTo = 7.5;

    /// <summary>Cold water that stood in the tank for a while is so much warmer than the supply at most, K.</summary>
    private const double UnseenWarmerK = 8;

    /// <summary>Top and bottom nearer than this are one temperature within the probes' offsets, K.</summary>
    private const double SameK = 1;

    private static void Ratio(Span<double> row, int index, Estimate? known, double typical, double spread)
    {
        var middle = known?.Value ?? typical;
        var ratio = known is { } k ? Math.Clamp(k.Deviation / k.Value, 0.005, spread) : spread;
        var scatter = FixedScatter.Normal(index);
        for (var m = 0; m < row.Length; m++)
        {
            row[m] = middle * Math.Exp(ratio * scatter[m]);
        }
    }

    private static void Plain(Span<double> row, int index, double middle, double deviation)
    {
        var scatter = FixedScatter.Normal(index);
        for (var m = 0; m < row.Length; m++)
        {
            row[m] = middle + (deviation * scatter[m]);
        }
    }

    private static void Between(Span<double> row, int index, double low, double high)
    {
        for (var m = 0; m < row.Length; m++)
        {
            row[m] = low + ((high - low) * FixedScatter.Uniform(index, m));
        }
    }
}
