using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// The hypotheses that run side by side, and how readings move and weigh them: with a bottom probe three of where it
/// sits, with a lone probe at the top two of what lies below it.
/// </summary>
internal sealed class HypothesisSet
{
    private const int N = TankGeometry.Layers;

    /// <summary>
    /// Longest single step through a gap, s, and how many of them at most: after half a day only the readings count.
    /// </summary>
    private const double LongestStepS = 60;

    private const int MostSteps = 720;

    /// <summary>Time for which one reading counts, s: such as come faster count less each.</summary>
    private const double ReadingEachS = 30;

    /// <summary>A reading further off than this many deviations counts as this far off.</summary>
    private const double ClipDeviations = 3.5;

    /// <summary>
    /// Without a bottom probe: how likely a run begins with cold below that nobody sees (one start in four follows a
    /// draw).
    /// </summary>
    private const double UnseenColdWeight = 0.25;

    /// <summary>
    /// Time after which somebody may have drawn without a lone probe at the top having seen it, s, and how near the
    /// story of cold below must have come to that of none before it is told anew, K.
    /// </summary>
    private const double UnseenAgainS = 3600, UnseenSameK = 1;

    /// <summary>Least weight of either story then: what a lone probe sees can have been so by both.</summary>
    private const double LeastUnseenWeight = 0.12;

    /// <summary>Least weight of a hypothesis: no reading rules one out for good.</summary>
    private const double LeastWeight = 0.01;

    /// <summary>
    /// How much of a reading's likelihood counts: what the model leaves out is alike from reading to reading.
    /// </summary>
    private const double Tempering = 0.3;

    /// <summary>Time for which every hypothesis must be far off until the layers are begun anew, s.</summary>
    private const double LostS = 180;

    private readonly EnsemblePrior _prior;
    private readonly double _coldCelsius;
    private readonly bool _seesBottom;
    private bool[] _isTankProbe = [];
    private double _lostS;
    private double _unseenS;

    public HypothesisSet(VanDescription van, TankGeometry tank, EnsemblePrior prior)
    {
        _prior = prior;
        _coldCelsius = van.Tank.ColdSupplyCelsius;
        _seesBottom = van.Fitted.Has(Channel.TankBottom);
        All = _seesBottom
            ? [.. Enumerable.Range(0, 3).Select(layer => new TankHypothesis(tank, prior, layer) { Weight = 1.0 / 3 })]
            :
            [
                new TankHypothesis(tank, prior, 0) { Weight = 1 - UnseenColdWeight },
                new TankHypothesis(tank, prior, 0, hasUnseenCold: true) { Weight = UnseenColdWeight },
            ];
    }

    /// <summary>All of them; their weights sum to about one.</summary>
    public TankHypothesis[] All { get; }

    /// <summary>How many readings they rest on.</summary>
    public int Readings { get; private set; }

    /// <summary>Begins from a first look.</summary>
    public void Start(ScreenedScan scan)
    {
        var fitted = scan.Fitted;
        _isTankProbe = [fitted.Has(Channel.TankTop), fitted.Has(Channel.TankMiddle), fitted.Has(Channel.TankBottom)];
        foreach (var hypothesis in All)
        {
            _prior.Spread(hypothesis.Ensemble, fitted.Has(Channel.Surroundings), _isTankProbe);
            hypothesis.KeepOffsetsApart(_isTankProbe);
        }

        SpreadLayers(scan);
    }

    /// <summary>Lets time pass.</summary>
    public void Pass(double stepS, in TankSurroundings around)
    {
        var steps = Math.Min(MostSteps, (int)Math.Ceiling(stepS / LongestStepS));
        foreach (var hypothesis in All)
        {
            for (var i = 0; i < steps; i++)
            {
                hypothesis.Pass(stepS / steps, around);
            }
        }
    }

    /// <summary>What a tank probe (0 top, 1 middle, 2 bottom) is expected to show, °C.</summary>
    public double Expect(int probe)
    {
        var expected = 0.0;
        foreach (var hypothesis in All)
        {
            expected += hypothesis.Weight * hypothesis.Predict(probe);
        }

        return expected;
    }

    /// <summary>Coolant begins or ends to turn by its own buoyancy.</summary>
    public void SetCirculation(bool isOn)
    {
        foreach (var hypothesis in All)
        {
            if (isOn)
            {
                hypothesis.BeginCirculation();
            }
            else
            {
                hypothesis.EndCirculation();
            }
        }
    }

    /// <summary>A draw is seen to begin.</summary>
    public void BeginDraw(double stepS)
    {
        foreach (var hypothesis in All)
        {
            hypothesis.BeginDraw(stepS, _coldCelsius);
        }
    }

    /// <summary>It has ended.</summary>
    public void EndDraw()
    {
        foreach (var hypothesis in All)
        {
            hypothesis.EndDraw();
        }
    }

    /// <summary>Takes the tank probes' readings.</summary>
    /// <param name="scan">The scan they are in.</param>
    /// <param name="stepS">Seconds since the last one.</param>
    /// <param name="readingK">Deviation of a reading about the model, K.</param>
    /// <param name="rows">What they may teach.</param>
    /// <param name="isDrawing">Whether hot water is drawn.</param>
    /// <param name="isHeated">Whether coil or element heats.</param>
    public void Assimilate(
        ScreenedScan scan, double stepS, double readingK, int[] rows, bool isDrawing, bool isHeated)
    {
        var variance = readingK * readingK * Math.Max(1, ReadingEachS / stepS);
        var isLost = true;
        var sum = 0.0;

        // A lone probe in standing water tells nothing of what lies below; only heat that comes or fails to come does.
        var leastWeight = _seesBottom ? LeastWeight : LeastUnseenWeight;
        foreach (var hypothesis in All)
        {
            var (likelihood, isOff) = Assimilate(hypothesis, scan, variance, rows, isDrawing);
            isLost &= isOff;
            var counts = _seesBottom || isHeated ? Tempering * Math.Min(1, stepS / ReadingEachS) : 0;
            hypothesis.Weight *= Math.Exp(counts * likelihood);
            sum += hypothesis.Weight;
            hypothesis.KeepOffsetsApart(_isTankProbe);
            hypothesis.KeepWithinBounds(isDrawing);
        }

        foreach (var hypothesis in All)
        {
            hypothesis.Weight = Math.Max(leastWeight, hypothesis.Weight / sum);
        }

        if (!_seesBottom)
        {
            SuspectUnseenDraw(scan, stepS);
        }

        _lostS = isLost ? _lostS + stepS : 0;
        if (_lostS > LostS)
        {
            // The model and the probes have parted: the readings are believed; what was learnt stays.
            SpreadLayers(scan);
            _lostS = 0;
        }
    }

    private static double TopOf(ScreenedScan scan) =>
        TankReadings.Nearest(scan, Channel.TankTop, Channel.TankMiddle, Channel.TankBottom);

    private void SpreadLayers(ScreenedScan scan)
    {
        var bottom = TankReadings.Nearest(scan, Channel.TankBottom, Channel.TankMiddle, Channel.TankTop);
        foreach (var hypothesis in All)
        {
            hypothesis.Spread(TopOf(scan), bottom, scan[Channel.TankBottom].IsGood);
        }
    }

    private void SuspectUnseenDraw(ScreenedScan scan, double stepS)
    {
        _unseenS += stepS;
        if (_unseenS < UnseenAgainS)
        {
            return;
        }

        _unseenS = 0;
        var (none, cold) = (All[0], All[1]);
        if (Math.Abs(none.MeanCelsius - cold.MeanCelsius) < UnseenSameK)
        {
            cold.Spread(TopOf(scan), 0, knowsBottom: false);
            cold.Weight = LeastUnseenWeight;
            none.Weight = 1 - LeastUnseenWeight;
        }
    }

    private (double LogLikelihood, bool IsOff) Assimilate(
        TankHypothesis hypothesis, ScreenedScan scan, double variance, int[] rows, bool isDrawing)
    {
        Span<double> weights = stackalloc double[N];
        var logLikelihood = 0.0;
        var isOff = false;
        for (var p = 2; p >= 0; p--)
        {
            var reading = scan[Channel.TankTop + p];
            if (!reading.IsGood)
            {
                continue;
            }

            hypothesis.Predict(p);
            hypothesis.Weigh(p, isDrawing, weights);
            var ensemble = hypothesis.Ensemble;
            var off = ensemble.Assimilate(reading.Value, variance, ClipDeviations, rows, weights, out var total);
            logLikelihood -= (0.5 * Math.Min(off * off, 25)) + (0.5 * Math.Log(total));
            isOff |= Math.Abs(off) > 2 * ClipDeviations;
            Readings++;
        }

        return (logLikelihood, isOff);
    }
}
