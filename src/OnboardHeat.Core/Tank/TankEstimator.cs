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
    /// Deviation of a reading about the model, K, in quiet and while water or heat
    /// moves: steps of 1/16 K and noise of 0.03 K are the smaller part, what twelve layers leave out the greater.
    /// </summary>
    private const double ReadingK = 0.12, MovingReadingK = 0.3;

    /// <summary>Time after heating or a draw until a reading counts as one in quiet, s.</summary>
    private const double CalmS = 600;

    /// <summary>Time of standing after which the air probe shows the place it stands in, s.</summary>
    private const double AirSettlesS = 3600;

    /// <summary>Coolant this much warmer than the tank says something of the coil, K.</summary>
    private const double CoilTeachesK = 8;

    private static readonly int[] s_lags = [Row.Lag, Row.Lag + 1, Row.Lag + 2];
    private static readonly int[] s_settling =
    [
        .. Enumerable.Range(Row.Layer, N), .. Enumerable.Range(Row.Probe, 3), .. Enumerable.Range(Row.Offset, 3),
    ];

    private static readonly int[] s_standing = [.. s_settling, Row.Loss];
    private static readonly int[] s_heating =
        [.. s_settling, .. s_lags, Row.Coil, Row.CoilFoot, Row.CoilReach, Row.CoolantGain];

    private static readonly int[] s_element = [.. s_settling, Row.Element];
    private static readonly int[] s_circulating = [.. s_settling, Row.Circulation];
    private static readonly int[] s_drawing = [.. s_settling, .. s_lags, Row.Draw];

    private readonly VanDescription _van;
    private readonly TankLearning _learning;
    private bool _isDrained;
    private readonly EnsemblePrior _prior;
    private readonly HypothesisSet _hypotheses;
    private readonly TankBelief _belief;
    private readonly DrawWatch _draw = new();
    private readonly NaturalCirculation _circulation = new();
    private readonly double[] _before = [double.NaN, double.NaN, double.NaN];
    private TankEstimate? _current;
    private bool _isStarted;
    private double _updatedS;
    private double _quietS;
    private double _airCelsius;
    private double? _coolant;
    private bool _isElementOn;
    private readonly AirSwing _air = new();

    /// <summary>An estimator that goes on from what was learnt.</summary>
    public TankEstimator(VanDescription van, LearntTank learnt, Estimate? learntCoilWPerK)
    {
        _van = van;
        Geometry = new TankGeometry(van.Tank);
        _prior = new EnsemblePrior(van.Tank, learnt, learntCoilWPerK);
        _hypotheses = new HypothesisSet(van, Geometry, _prior);
        _belief = new TankBelief(van.Tank, Geometry, _hypotheses.All, !van.Fitted.Has(Channel.TankBottom));
        _learning = new TankLearning(Geometry, _prior, _hypotheses.All, _belief, learnt, learntCoilWPerK);
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
        var readingK = ReadingK + ((MovingReadingK - ReadingK) * Math.Exp(-_quietS / CalmS));
        var isHeated = coolant is not null || isElementOn;
        var rows = isInWorks && !_draw.IsDrawing ? s_settling : RowsToTeach();
        _hypotheses.Assimilate(scan, stepS, readingK, rows, _draw.IsDrawing, isHeated);
        var isHeatedByCoil = IsHeatedByCoil(_belief.MeanLayers().Value);
        _learning.Observe(_quietS, isHeatedByCoil, _circulation.IsFound, isInWorks, _airCelsius, stepS);
    }

    /// <summary>Air by the tank in the time to come, as the days so far promise.</summary>
    public AirAhead AirAhead() =>
        new(_quietS > AirSettlesS ? _air : null, _airCelsius, _belief.Of(Row.AirOffset).Value);

    /// <summary>
    /// What acts on the tank while heating goes on as now; null when nothing heats. An engine that runs is taken to get
    /// warm.
    /// </summary>
    public TankSurrounds? HeatingAsNow(double warmCoolantCelsius) => (_coolant, _isElementOn) switch
    {
        (null, false) => null,
        (null, true) => HeatingIfDriven(0) with { CoilWPerK = 0, ElementW = _belief.Of(Row.Element).Value },
        ({ } shown, var element) => HeatingIfDriven(Math.Max(warmCoolantCelsius, shown)) with
        {
            ElementW = element ? _belief.Of(Row.Element).Value : 0,
        },
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

    /// <summary>
    /// What a reading may teach now: what acts on the tank, and the loss only when nothing else does.
    /// </summary>
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

    private bool IsHeatedByCoil(double meanCelsius) =>
        _coolant is { } shown && shown > meanCelsius + CoilTeachesK && !_isElementOn;

    private TankEstimate Make()
    {
        if (!_isStarted)
        {
            return _isDrained ? TankEstimate.Unknown with { IsDrained = true } : TankEstimate.Unknown;
        }

        var made = _belief.Make(_airCelsius, _hypotheses.Readings);
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
        _hypotheses.Start(scan);
        _current = null;
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
        _hypotheses.Pass(stepS, around);
    }

    private void WatchForCirculation(ScreenedScan scan, bool isQuiet, double stepS)
    {
        var wasFound = _circulation.IsFound;
        var areOpen = scan[Signal.ValvesClosed] != true;
        var (top, bottom) = (TankReadings.Of(scan, Channel.TankTop), TankReadings.Of(scan, Channel.TankBottom));
        _circulation.Observe(isQuiet && areOpen, top, bottom, stepS);
        if (isQuiet && areOpen && scan[Channel.Surroundings].IsGood)
        {
            var (flow, back) = (TankReadings.Of(scan, Channel.Flow), TankReadings.Of(scan, Channel.Return));
            _circulation.ObserveLines(flow, back, bottom, _airCelsius, stepS);
        }

        if (_circulation.IsFound != wasFound)
        {
            _hypotheses.SetCirculation(_circulation.IsFound);
        }
    }

    private void WatchForDraws(ScreenedScan scan, double stepS)
    {
        var lowest = TankReadings.LowestGood(scan);
        if (lowest < 0)
        {
            return;
        }

        var wasDrawing = _draw.IsDrawing;
        if (_draw.Observe(lowest, scan[Channel.TankTop + lowest].Value, _hypotheses.Expect(lowest), stepS))
        {
            _hypotheses.BeginDraw(stepS);
        }
        else if (wasDrawing && !_draw.IsDrawing)
        {
            _hypotheses.EndDraw();
        }
    }
}
