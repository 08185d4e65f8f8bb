using OnboardHeat.Core.Circuit.Signs;

namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Adds up what the signs say. Two questions are kept apart: has circulation stopped (any cause), and is coolant
/// leaving. Conjunctions and vetoes come before the sums: a plain addition of signs that share a cause cries wolf.
/// Spray speaks for loss by itself; the lines and the tank speak for stopped first, and the speed of the lines' fall
/// makes a loss of it.
/// </summary>
internal sealed class LossTest
{
    /// <summary>
    /// Nats for 'stopped' from tank and lines. Budget: ten false alarms in 1,000 driving hours; what the sum is worth
    /// was measured on simulated and recorded drives, and this keeps the budget on others than those it was chosen on.
    /// </summary>
    public const double StoppedThresholdNats = 3.85;

    /// <summary>Nats for 'leaving' once it has stopped: most that stops all at once on the road has come off.</summary>
    public const double LeavingThresholdNats = -1;

    /// <summary>
    /// Nats of spray and circuit together for a loss. Spray is one rise in one probe, so it must say more than the
    /// circuit, which is the agreement of three: a nat of the circuit counts as much as eight fifths of one.
    /// </summary>
    public const double LossThresholdNats = 8;

    /// <summary>
    /// Nats for 'leaving' where the engine's running is only inferred: an engine at rest looks the same until the fall
    /// is fast.
    /// </summary>
    public const double InferredLeavingNats = 4;

    /// <summary>How long after the engine was stopped the fall of the lines is still judged, seconds.</summary>
    public const double AfterStopS = 240;

    /// <summary>
    /// The engine brings a slug of cold coolant and then hot; the lines say nothing in that time, seconds.
    /// </summary>
    private const double AfterStartS = 60;

    /// <summary>
    /// After the engine was stopped every line cools. Nats that then make a loss of it, in a van whose full lines are
    /// known from an earlier stop and in one where they are not; and how long to wait first, seconds: for the slopes,
    /// or where nothing is known and nothing spoke before, until walls and coil have settled too.
    /// </summary>
    private const double AfterStopKnownNats = 3, AfterStopUnknownNats = 8, AfterStopSpokeNats = 4.5,
        AfterStopLeastNats = 1.5, QuietS = 35, KnownS = 70, SettledS = 130;

    /// <summary>What spoke before the stop counts from here and no further than so far, nats.</summary>
    private const double SpokeFromNats = 0.6, SpokeMostNats = 4, SpokeBeforeNats = 1.5;

    /// <summary>
    /// Lines that are kept warm speak against 'stopped', nats; falling faster than this share of a full pipe's pace
    /// they are chilled.
    /// </summary>
    private const double NothingFalls = -2.8, ChilledShare = 9;

    private const double CircuitWorth = 1.4, UsualCircuitNats = 1, SprayLeastNats = 2;

    /// <summary>One window of a few scans may be lucky; the sum follows over so many seconds.</summary>
    private const double SmoothS = 5;

    /// <summary>Below this, tank and lines show that coolant circulates.</summary>
    private const double StillRunsNats = 0.5;

    private readonly TankHeatSign _tank = new();
    private readonly LineFallSign _lines = new();
    private readonly LineDecaySign _decay = new();
    private readonly ReturnPlaceSign _place = new();
    private readonly BalanceSign _balance = new();
    private readonly AirSign _air = new();
    private readonly TraySign _tray = new();
    private readonly ContactSign _contacts = new();
    private readonly ICircuitSign[] _signs;

    public LossTest() => _signs = [_tank, _lines, _decay, _place, _balance, _air, _tray, _contacts];

    /// <summary>
    /// Sum of tank and lines for 'no coolant passes the coil', nats. Held where it stood when the engine was stopped.
    /// </summary>
    public double CircuitNats { get; private set; }

    /// <summary>What of that counts after the engine was stopped.</summary>
    private double SpokeNats => Math.Clamp(CircuitNats - SpokeFromNats, 0, SpokeMostNats);

    /// <summary>Sum for 'coolant is leaving', nats.</summary>
    public double LeavingNats { get; private set; }

    /// <summary>Whether no coolant passes the coil while the engine runs.</summary>
    public bool IsStopped { get; private set; }

    /// <summary>Whether coolant is leaving the circuit.</summary>
    public bool IsLoss { get; private set; }

    /// <summary>Seconds for which tank and lines have shown without a break that coolant circulates.</summary>
    public double RunsForS { get; private set; }

    /// <summary>What the tray says of hot liquid in it, nats.</summary>
    public double TrayNats => _tray.StoppedNats;

    /// <summary>What was learnt of this van's lines.</summary>
    public LearntCircuit Learnt(LearntCircuit before) =>
        before with
        {
            FlowDecayPerS = _decay.Learnt.Flow ?? before.FlowDecayPerS,
            ReturnDecayPerS = _decay.Learnt.Return ?? before.ReturnDecayPerS,
        };

    /// <summary>Whether tank and flow, or both lines, can be judged.</summary>
    public bool CanJudgeCirculation { get; private set; }

    public IReadOnlyList<ICircuitSign> Signs => _signs;

    /// <summary>A sign taken away, by name, for trials of what each is worth; null in earnest.</summary>
    public string? Muted { get; set; }

    public void Observe(Loop loop)
    {
        foreach (var sign in _signs)
        {
            if (sign.Name != Muted)
            {
                sign.Observe(loop);
            }
        }

        var spray = _air.StoppedNats + _tray.StoppedNats + _contacts.StoppedNats;
        CanJudgeCirculation = loop.IsFresh(loop.Flow) && (loop.IsFresh(loop.Return) || loop.IsFresh(loop.Bottom));
        _decay.LearnFromStop(loop, SpokeNats > SpokeBeforeNats || IsLoss || loop.IsInWorks);
        LeavingNats = _decay.LeavingNats + spray;
        IsStopped = IsLoss = false;
        if (loop.IsEngineOn == true)
        {
            JudgeRunning(loop, spray);
        }
        else if (loop.IsEngineOn == false && !loop.IsEngineInferred)
        {
            JudgeStanding(loop, spray);
        }
    }

    private void JudgeRunning(Loop loop, double spray)
    {
        var counts = loop.IsProven && loop.EngineOnS > AfterStartS && !_lines.IsOneAlone;
        CircuitNats = counts ? CircuitNats + ((Circuit() - CircuitNats) * (1 - Math.Exp(-loop.StepS / SmoothS))) : 0;
        RunsForS = loop.IsProven && CircuitNats < StillRunsNats && _tank.StoppedNats < -2 ? RunsForS + loop.StepS : 0;
        var isStopped = CircuitNats >= StoppedThresholdNats;
        IsStopped = isStopped && !loop.IsEngineInferred;
        // Spray is loss by itself. A hose may spout for a minute while the coil is still fed, so that running lines do
        // not speak against it.
        var decay = _decay.LeavingNats >= (loop.IsEngineInferred ? InferredLeavingNats : LeavingThresholdNats);
        var all = spray + (CircuitWorth * Math.Max(0, CircuitNats + UsualCircuitNats));
        IsLoss = (isStopped && decay) || (spray >= SprayLeastNats && all >= LossThresholdNats);
    }

    private void JudgeStanding(Loop loop, double spray)
    {
        RunsForS = 0;
        var spoke = SpokeNats;
        var isKnown = _decay.IsVanKnown;
        var needed = isKnown ? AfterStopKnownNats : spoke >= SpokeBeforeNats
            ? AfterStopSpokeNats : AfterStopUnknownNats;
        IsLoss = !_lines.IsOneAlone && loop.EngineOffS < AfterStopS
            && loop.EngineOffS > (spoke >= SpokeBeforeNats ? QuietS : isKnown ? KnownS : SettledS)
            && LeavingNats >= AfterStopLeastNats
            && LeavingNats + spoke >= needed;
        IsLoss |= spray >= LossThresholdNats;
    }

    /// <summary>
    /// Tank and lines together. The weights are those of a logistic regression on simulated and recorded drives,
    /// rounded: what each sign is worth beside the others. Its core is the conjunction: an engine that cools takes the
    /// lines down and goes on feeding the coil; a draw stills the tank's warming and leaves the lines hot. Only where
    /// nothing comes any more do both happen at once.
    /// </summary>
    private double Circuit()
    {
        if (_decay.StillShare > ChilledShare)
        {
            // No pipe cools so fast by itself, full or bared: water runs over it.
            return NothingFalls;
        }

        var tank = Math.Clamp(_tank.StoppedNats, 0, 10);
        var bared = Math.Clamp(_decay.LeavingNats, 0, 9);
        var stands = Muted == _decay.Name ? 1 : Math.Clamp(_decay.StillShare / 0.7, 0, 1);
        var fallen = Math.Clamp((_lines.DepthK - 0.5) / 3, 0, 1);
        var both = fallen * Math.Min(tank, 6);
        return (1.1 * tank) + (NothingFalls * (1 - stands)) + (0.53 * Math.Min(0, _lines.StoppedNats))
            + (0.5 * _place.StoppedNats) + (3.4 * Math.Min(0, _balance.StoppedNats))
            + (0.25 * fallen * bared) + (0.007 * Math.Min(_lines.DepthK, 10) * bared)
            + (0.22 * Math.Clamp(_lines.DepthK - 8, 0, 8)) + (0.4 * Math.Clamp(_lines.DepthK - 18, 0, 6))
            + (0.3 * both * stands) + (0.13 * both * bared);
    }

    /// <summary>What the signs say now, for an alarm just raised.</summary>
    public IReadOnlyList<SignEvidence> Evidence(Loop loop) =>
        [.. _signs.Select(s => new SignEvidence(s.Name, s.IsHealthy, s.StoppedNats, s.LeavingNats, s.Words(loop)))];

    /// <summary>One sentence of what speaks for an alarm, strongest first, in figures.</summary>
    public string Because(Loop loop)
    {
        var said = _signs.Where(s => s.StoppedNats > 0.7 || s.LeavingNats > 1.5)
            .OrderByDescending(s => Math.Max(s.StoppedNats, s.LeavingNats)).Select(s => s.Words(loop));
        var engine = loop.IsEngineOn != true
            ? FormattableString.Invariant($"engine stopped {loop.EngineOffS:0} s ago")
            : loop.IsEngineInferred ? "engine taken to run, by the lines" : "engine running";
        return string.Join("; ", said.Append(engine));
    }
}
