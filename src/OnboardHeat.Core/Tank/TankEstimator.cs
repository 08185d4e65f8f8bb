using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Follows the tank from scan to scan. Between readings every member of every hypothesis stands, is heated and is drawn
/// from as physics says; each reading then moves them towards what it shows, by as much as it can know, and weighs the
/// hypotheses.
/// </summary>
internal sealed class TankEstimator
{
    private const int N = TankGeometry.Layers;

    /// <summary>Shortest time between two updates, s: the water and its probes move slower than this.</summary>
    private const double ShortestStepS = 5;

    /// <summary>
    /// The same after standing calm for a while, s: nothing but the loss goes on, and a fall below the model is looked
    /// at at once.
    /// </summary>
    private const double CalmStepS = 20;

    /// <summary>
    /// Longest single step through a gap, s, and how many of them at most: after half a day only the readings count.
    /// </summary>
    private const double LongestStepS = 60;

    private const int MostSteps = 720;

    /// <summary>
    /// Deviation of a reading about the model, K, for one reading each half minute, in quiet and while water or heat
    /// moves: steps of 1/16 K and noise of 0.03 K are the smaller part, what twelve layers leave out the greater.
    /// Readings that come faster count less each.
    /// </summary>
    private const double ReadingK = 0.12, MovingReadingK = 0.3, ReadingEachS = 30;

    /// <summary>Time after heating or a draw until a reading counts as one in quiet, s.</summary>
    private const double CalmS = 600;

    /// <summary>A reading further off than this many deviations counts as this far off.</summary>
    private const double ClipDeviations = 3.5;

    /// <summary>Time of standing after which the air probe shows the place it stands in, s.</summary>
    private const double AirSettlesS = 3600;

    /// <summary>Coolant this much warmer than the tank says something of the coil, K.</summary>
    private const double CoilTeachesK = 8;

    /// <summary>Least weight of a hypothesis: no reading rules one out for good.</summary>
    private const double LeastWeight = 0.01;

    /// <summary>
    /// How much of a reading's likelihood counts: what the model leaves out is alike from reading to reading.
    /// </summary>
    private const double Tempering = 0.3;

    private static readonly int[] s_settling = [.. Enumerable.Range(Row.Layer, N), .. Enumerable.Range(Row.Probe, 3), .. Enumerable.Range(Row.Offset, 3)];
    private static readonly int[] s_standing = [.. s_settling, Row.Loss];
    private static readonly int[] s_heating = [.. s_settling, Row.Lag, Row.Lag + 1, Row.Lag + 2, Row.Coil, Row.CoilFoot, Row.CoilReach, Row.CoolantGain];
    private static readonly int[] s_element = [.. s_settling, Row.Element];
    private static readonly int[] s_circulating = [.. s_settling, Row.Circulation];
    private static readonly int[] s_drawing = [.. s_settling, Row.Lag, Row.Lag + 1, Row.Lag + 2, Row.Draw];

    private readonly VanDescription _van;
    private readonly TankLearning _learning;
    private bool _isDrained;
    private readonly EnsemblePrior _prior;
    private readonly TankHypothesis[] _hypotheses;
    private readonly TankBelief _belief;
    private readonly DrawWatch _draw = new();
    private readonly NaturalCirculation _circulation = new();
    private readonly double[] _before = [double.NaN, double.NaN, double.NaN];
    private bool[] _isTankProbe = [];
    private TankEstimate? _current;
    private bool _isStarted;
    private double _updatedS;
    private double _lostS;
    private double _quietS;
    private double _airCelsius;
    private double? _coolant;
    private bool _isElementOn;
    private readonly AirSwing _air = new();
    private int _readings;

    /// <summary>An estimator that goes on from what was learnt.</summary>
    public TankEstimator(VanDescription van, LearntTank learnt, Estimate? learntCoilWPerK)
    {
        _van = van;
        Geometry = new TankGeometry(van.Tank);
        _prior = new EnsemblePrior(van.Tank, learnt, learntCoilWPerK);
        var heights = van.Fitted.Has(Channel.TankBottom) ? 3 : 1;
        _hypotheses = [.. Enumerable.Range(0, heights).Select(layer => new TankHypothesis(Geometry, _prior, layer) { Weight = 1.0 / heights })];
        _belief = new TankBelief(van.Tank, Geometry, _hypotheses);
        _learning = new TankLearning(Geometry, _prior, _hypotheses, _belief, learnt, learntCoilWPerK);
    }

    /// <summary>The estimate after the newest scan; made when asked for.</summary>
    public TankEstimate Current => _current ??= Make();

    /// <summary>The hypotheses behind it, and what they say together; of no meaning while nothing is known.</summary>
    public TankBelief Belief => _belief;

    /// <summary>The tank's geometry.</summary>
    public TankGeometry Geometry { get; }

    /// <summary>Takes a scan.</summary>
    public void Observe(ScreenedScan scan, bool isDrained = false, bool isInWorks = false)
    {
        if (isDrained != _isDrained)
        {
            (_isDrained, _isStarted, _current) = (isDrained, false, null);
            _learning.ForgetWater();
            Array.Fill(_before, double.NaN);
        }

        if (isDrained)
        {
            return;
        }

        if (!_isStarted)
        {
            if (TankReadings.AreSteady(scan, _before))
            {
                Start(scan);
            }

            return;
        }

        var stepS = scan.ElapsedS - _updatedS;
        if (stepS < (_quietS > CalmS ? CalmStepS : ShortestStepS))
        {
            return;
        }

        _current = null;
        _updatedS = scan.ElapsedS;
        var coolant = TankReadings.CoolantOf(scan);
        var isElementOn = scan[Signal.ElementOn] == true;
        (_coolant, _isElementOn) = (coolant, isElementOn);
        Pass(scan, stepS, coolant, isElementOn);
        WatchForDraws(scan, stepS);
        var isQuiet = !_draw.IsDrawing && !isElementOn && coolant is null;
        _quietS = isQuiet ? _quietS + stepS : 0;
        WatchForCirculation(scan, isQuiet, stepS);
        Assimilate(scan, stepS, isInWorks && !_draw.IsDrawing ? s_settling : RowsToTeach());
        _learning.Observe(_quietS, IsHeatedByCoil(_belief.MeanLayers().Value), _circulation.IsFound, isInWorks, _airCelsius, stepS);
    }

    /// <summary>Air by the tank in the time to come, as the days so far promise.</summary>
    public AirAhead AirAhead() => new(_quietS > AirSettlesS ? _air : null, _airCelsius, _belief.Of(Row.AirOffset).Value);

    /// <summary>
    /// What acts on the tank while heating goes on as now; null when nothing heats. An engine that runs is taken to get
    /// warm.
    /// </summary>
    public TankSurrounds? HeatingAsNow(double warmCoolantCelsius) => (_coolant, _isElementOn) switch
    {
        (null, false) => null,
        (null, true) => HeatingIfDriven(0) with { CoilWPerK = 0, ElementW = _belief.Of(Row.Element).Value },
        ({ } shown, var element) => HeatingIfDriven(Math.Max(warmCoolantCelsius, shown)) with { ElementW = element ? _belief.Of(Row.Element).Value : 0 },
    };

    /// <summary>What would act on it with coolant of a certain temperature in the coil.</summary>
    public TankSurrounds HeatingIfDriven(double coolantCelsius) => new(
        _airCelsius + _belief.Of(Row.AirOffset).Value, _belief.Of(Row.Loss).Value, coolantCelsius,
        _belief.Of(Row.Coil).Value,
        0.5 * _belief.Of(Row.CoilFoot).Value, _belief.Of(Row.CoilReach).Value, 0);

    /// <summary>What is worth keeping.</summary>
    public LearntTank Learnt() => _learning.Learnt(_isStarted);

    /// <summary>The coil's conductance as learnt, watts per kelvin; the count is of heating spells.</summary>
    public Estimate? LearntCoilWPerK() => _learning.LearntCoilWPerK(_isStarted);

    /// <summary>A change mark: what it touches is learnt anew, all else stays.</summary>
    public void Take(PersonAction action)
    {
        if (action.Kind == ActionKind.Changed)
        {
            _learning.Take(action);
        }
    }

    /// <summary>What a reading may teach now: what acts on the tank, and the loss only when nothing else does.</summary>
    private int[] RowsToTeach()
    {
        if (_draw.IsDrawing)
        {
            return s_drawing;
        }

        if (_isElementOn)
        {
            return s_element;
        }

        if (_coolant is not null)
        {
            return s_heating;
        }

        return _circulation.IsFound ? s_circulating
            : _quietS < TankLearning.SettlesS || _learning.IsLeaking ? s_settling
            : s_standing;
    }

    private bool IsLosing => _learning.IsLeaking || _circulation.IsFound;

    private bool IsHeatedByCoil(double meanCelsius) => _coolant is { } shown && shown > meanCelsius + CoilTeachesK && !_isElementOn;

    private TankEstimate Make()
    {
        if (!_isStarted)
        {
            return _isDrained ? TankEstimate.Unknown with { IsDrained = true } : TankEstimate.Unknown;
        }

        var made = _belief.Make(_airCelsius, _readings);
        return made with
        {
            IsHeatedByCoil = IsHeatedByCoil(made.MeanCelsius.Value),
            IsLosingThroughCircuit = IsLosing,
            Hygiene = _learning.Hygiene,
        };
    }

    private void Start(ScreenedScan scan)
    {
        _isStarted = true;
        _updatedS = scan.ElapsedS;
        _airCelsius = EnsemblePrior.AirStandInCelsius;
        _isTankProbe = [scan.Fitted.Has(Channel.TankTop), scan.Fitted.Has(Channel.TankMiddle), scan.Fitted.Has(Channel.TankBottom)];
        foreach (var hypothesis in _hypotheses)
        {
            _prior.Spread(hypothesis.Ensemble, scan.Fitted.Has(Channel.Surroundings), _isTankProbe);
            hypothesis.KeepOffsetsApart(_isTankProbe);
        }

        SpreadLayers(scan);
        _current = null;
    }

    private void SpreadLayers(ScreenedScan scan)
    {
        var top = TankReadings.Nearest(scan, Channel.TankTop, Channel.TankMiddle, Channel.TankBottom);
        var bottom = TankReadings.Nearest(scan, Channel.TankBottom, Channel.TankMiddle, Channel.TankTop);
        foreach (var hypothesis in _hypotheses)
        {
            hypothesis.Spread(top, bottom, scan[Channel.TankBottom].IsGood);
        }
    }

    private void Pass(ScreenedScan scan, double stepS, double? coolant, bool isElementOn)
    {
        if (scan[Channel.Surroundings].IsGood)
        {
            _airCelsius = scan[Channel.Surroundings].Value;
            if (_quietS > AirSettlesS)
            {
                _air.Observe(scan.ElapsedS, _airCelsius);
            }
        }

        var around = new TankSurroundings(
            _airCelsius,
            coolant,
            _circulation.IsFound ? TankReadings.ColderLineOf(scan) ?? _airCelsius : null,
            _draw.IsDrawing ? _van.Tank.ColdSupplyCelsius : null,
            isElementOn);
        var steps = Math.Min(MostSteps, (int)Math.Ceiling(stepS / LongestStepS));
        foreach (var hypothesis in _hypotheses)
        {
            for (var i = 0; i < steps; i++)
            {
                hypothesis.Pass(stepS / steps, around);
            }
        }
    }

    private void WatchForCirculation(ScreenedScan scan, bool isQuiet, double stepS)
    {
        var wasFound = _circulation.IsFound;
        var areOpen = scan[Signal.ValvesClosed] != true;
        _circulation.Observe(isQuiet && areOpen, TankReadings.Of(scan, Channel.TankTop), TankReadings.Of(scan, Channel.TankBottom), stepS);
        foreach (var hypothesis in _hypotheses)
        {
            if (_circulation.IsFound && !wasFound)
            {
                hypothesis.BeginCirculation();
            }
            else if (wasFound && !_circulation.IsFound)
            {
                hypothesis.EndCirculation();
            }
        }
    }

    private void WatchForDraws(ScreenedScan scan, double stepS)
    {
        var lowest = scan[Channel.TankBottom].IsGood ? 2 : scan[Channel.TankMiddle].IsGood ? 1 : scan[Channel.TankTop].IsGood ? 0 : -1;
        if (lowest < 0)
        {
            return;
        }

        var expected = 0.0;
        foreach (var hypothesis in _hypotheses)
        {
            expected += hypothesis.Weight * hypothesis.Predict(lowest);
        }

        var wasDrawing = _draw.IsDrawing;
        var begins = _draw.Observe(lowest, scan[Channel.TankTop + lowest].Value, expected, stepS);
        foreach (var hypothesis in _hypotheses)
        {
            if (begins)
            {
                hypothesis.BeginDraw(stepS, _van.Tank.ColdSupplyCelsius);
            }
            else if (wasDrawing && !_draw.IsDrawing)
            {
                hypothesis.EndDraw();
            }
        }
    }

    private void Assimilate(ScreenedScan scan, double stepS, int[] rows)
    {
        var readingK = ReadingK + ((MovingReadingK - ReadingK) * Math.Exp(-_quietS / CalmS));
        var variance = readingK * readingK * Math.Max(1, ReadingEachS / stepS);
        var isLost = true;
        var sum = 0.0;
        foreach (var hypothesis in _hypotheses)
        {
            var (likelihood, isOff) = Assimilate(hypothesis, scan, variance, rows);
            isLost &= isOff;
            hypothesis.Weight *= Math.Exp(Tempering * likelihood * Math.Min(1, stepS / ReadingEachS));
            sum += hypothesis.Weight;
            hypothesis.KeepOffsetsApart(_isTankProbe);
            hypothesis.KeepWithinBounds(_draw.IsDrawing);
        }

        foreach (var hypothesis in _hypotheses)
        {
            hypothesis.Weight = Math.Max(LeastWeight, hypothesis.Weight / sum);
        }

        _lostS = isLost ? _lostS + stepS : 0;
        if (_lostS > 180)
        {
            // The model and the probes have parted: the readings are believed and the layers begun anew; what was
            // learnt stays.
            SpreadLayers(scan);
            _lostS = 0;
        }
    }

    private (double LogLikelihood, bool IsOff) Assimilate(TankHypothesis hypothesis, ScreenedScan scan, double variance, int[] rows)
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
            hypothesis.Weigh(p, _draw.IsDrawing, weights);
            var off = hypothesis.Ensemble.Assimilate(reading.Value, variance, ClipDeviations, rows, weights, out var total);
            logLikelihood -= (0.5 * Math.Min(off * off, 25)) + (0.5 * Math.Log(total));
            isOff |= Math.Abs(off) > 2 * ClipDeviations;
            _readings++;
        }

        return (logLikelihood, isOff);
    }
}
