using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Looks at the belief each minute and takes from it what is worth keeping: loss and coil by spells, the facts of
/// hygiene, and whether heat leaves by another way than the lagging.
/// </summary>
internal sealed class TankLearning
{
    /// <summary>
    /// Time after heating, a draw or the start until the fall of the probes tells the loss and no longer the layers, s.
    /// </summary>
    public const double SettlesS = 2700;

    /// <summary>Shortest standing (settled) and heating spells that teach, s.</summary>
    private const double LeastStandingS = 3 * 3600, LeastHeatingS = 1200;

    /// <summary>
    /// What one spell can never say better: the shared probe offsets and the air probe's, as a share of the figure.
    /// </summary>
    private const double LossLeastShare = 0.03, CoilLeastShare = 0.1;

    /// <summary>Time between two looks at what can be learnt, s.</summary>
    private const double LearnEachS = 60;

    /// <summary>
    /// A tank with so much between bottom and top falls at its probes by conduction too: its loss is not judged by
    /// them, K.
    /// </summary>
    private const double LayeredK = 6;

    private readonly EnsemblePrior _prior;
    private readonly TankHypothesis[] _hypotheses;
    private readonly TankBelief _belief;
    private readonly SpellLearning _loss;
    private readonly SpellLearning _coil;
    private readonly CircuitLeak _leak;
    private Estimate? _lossBeforeChange;
    private bool _wasQuiet;
    private double _sinceS;

    public TankLearning(
        TankGeometry tank, EnsemblePrior prior, TankHypothesis[] hypotheses, TankBelief belief, LearntTank learnt,
        Estimate? learntCoilWPerK)
    {
        (_prior, _hypotheses, _belief) = (prior, hypotheses, belief);
        _loss = new SpellLearning(learnt.LossWPerK, LeastStandingS, LossLeastShare);
        _coil = new SpellLearning(learntCoilWPerK, LeastHeatingS, CoilLeastShare);
        _lossBeforeChange = learnt.LossBeforeChangeWPerK;
        _leak = new CircuitLeak(tank);
    }

    /// <summary>Whether the whole tank falls several times faster than its lagging explains.</summary>
    public bool IsLeaking => _leak.IsFound;

    /// <summary>Facts of hygiene so far.</summary>
    public HygieneFacts Hygiene { get; private set; }

    /// <summary>Takes the belief after a step.</summary>
    /// <param name="quietS">How long nothing has heated or drawn, s; zero while something does.</param>
    /// <param name="isHeatedByCoil">Whether warm coolant heats the tank.</param>
    /// <param name="isCirculating">Whether coolant turns by its own buoyancy.</param>
    /// <param name="isInWorks">Whether somebody works on the circuit: nothing of that is this van's own.</param>
    /// <param name="airCelsius">Air by the tank, °C.</param>
    /// <param name="stepS">Seconds since the last call.</param>
    public void Observe(
        double quietS, bool isHeatedByCoil, bool isCirculating, bool isInWorks, double airCelsius, double stepS)
    {
        var isQuiet = quietS > 0;
        _sinceS += stepS;
        if (isQuiet == _wasQuiet && _sinceS < LearnEachS)
        {
            return;
        }

        var sinceS = _sinceS;
        (_sinceS, _wasQuiet) = (0, isQuiet);
        var loss = _belief.Of(Row.Loss);
        var coil = _belief.Of(Row.Coil);
        var (lowest, highest) = (_belief.Of(Row.Layer).Value, _belief.Of(Row.Layer + TankGeometry.Layers - 1).Value);
        var usualWPerK = _loss.Known?.Value ?? _prior.TypicalLossWPerK;
        _leak.Observe(
            isQuiet && highest - lowest < LayeredK, _belief.MeanLayers().Value, airCelsius, usualWPerK, sinceS);
        _loss.Observe(
            !isInWorks && quietS > SettlesS && !IsLeaking && !isCirculating, sinceS, loss.Value, loss.Deviation);
        _coil.Observe(!isInWorks && isHeatedByCoil, sinceS, coil.Value, coil.Deviation);
        Hygiene = Hygiene.After(sinceS, lowest, highest);
    }

    /// <summary>The tank was drained or filled: its water has no past.</summary>
    public void ForgetWater() => Hygiene = default;

    /// <summary>What is worth keeping of the tank; before the first reading what was known already.</summary>
    public LearntTank Learnt(bool isStarted) => new()
    {
        LossWPerK = Now(_loss, Row.Loss, isStarted),
        LossBeforeChangeWPerK = _lossBeforeChange,
    };

    /// <summary>The coil's conductance as learnt, watts per kelvin; the count is of heating spells.</summary>
    public Estimate? LearntCoilWPerK(bool isStarted) => Now(_coil, Row.Coil, isStarted);

    /// <summary>A change mark: what it touches is learnt anew, all else stays.</summary>
    public void Take(PersonAction action)
    {
        if (action.Target == "insulation")
        {
            _lossBeforeChange = _loss.Known ?? _lossBeforeChange;
            _loss.Forget();
            _prior.Respread(_hypotheses, Row.Loss);
        }
        else if (action.Target is "coil" or "coolant" or "hoses")
        {
            _coil.Forget();
            _prior.Respread(_hypotheses, Row.Coil);
        }
        else if (action.Target.StartsWith("probe", StringComparison.Ordinal))
        {
            _prior.Respread(_hypotheses, Row.Offset);
        }
    }

    private Estimate? Now(SpellLearning learning, int row, bool isStarted)
    {
        if (!isStarted)
        {
            return learning.Known;
        }

        var now = _belief.Of(row);
        return learning.KnownNow(now.Value, now.Deviation);
    }
}
