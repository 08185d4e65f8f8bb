using OnboardHeat.Core.Circuit.Signs;

namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Adds up what the signs say. Two questions are kept apart: has circulation stopped (any cause), and is coolant leaving. Conjunctions
/// and vetoes come before the sums: a plain addition of signs that share a cause cries wolf. Spray speaks for loss by itself; the lines
/// and the tank speak for stopped first, and the speed of the lines' fall makes a loss of it.
/// </summary>
internal sealed class LossTest
{
    /// <summary>
    /// Nats for 'stopped'. Budget: five false alarms in 1,000 driving hours, which are some 30,000 spells of two minutes: ln 6,000 = 8.7
    /// were the likelihoods exact; they are rounded towards doubt, and 8 keeps the budget on simulated drives.
    /// </summary>
    public const double StoppedThresholdNats = 8;

    /// <summary>Nats for 'leaving' once it has stopped: most that stops all at once on the road has come off.</summary>
    public const double LeavingThresholdNats = 1;

    /// <summary>Nats for both after the engine was stopped: every ordinary stop lets the lines cool, and there is one an hour.</summary>
    public const double AfterStopThresholdNats = 7, AfterStopLeavingNats = 1.5;

    /// <summary>Nats for 'leaving' where the engine's running is only inferred: an engine at rest looks the same until the fall is fast.</summary>
    public const double InferredLeavingNats = 6;

    /// <summary>How long after the engine was stopped the fall of the lines is still judged, seconds.</summary>
    public const double AfterStopS = 240;

    /// <summary>The engine brings a slug of cold coolant and then hot; the lines say nothing in that time, seconds.</summary>
    private const double AfterStartS = 60, AfterStopQuietS = 30;

    /// <summary>
    /// Full lines too may drop fast at first when the pump stops (their walls and the coil take heat), for two minutes at most. Only where
    /// something spoke before the engine was stopped need that not be waited for.
    /// </summary>
    private const double AfterStopSettledS = 130, SpokeBeforeNats = 4;

    private readonly TankHeatSign _tank = new();
    private readonly LineFallSign _lines = new();
    private readonly ReturnPlaceSign _place = new();
    private readonly AirSign _air = new();
    private readonly TraySign _tray = new();
    private readonly ContactSign _contacts = new();
    private readonly ICircuitSign[] _signs;

    public LossTest() => _signs = [_tank, _lines, _place, _air, _tray, _contacts];

    /// <summary>Sum for 'no coolant passes the coil', nats, zero or more. Held where it stood when the engine was stopped.</summary>
    public double StoppedNats { get; private set; }

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

    /// <summary>Whether tank and flow, or both lines, can be judged.</summary>
    public bool CanJudgeCirculation { get; private set; }

    public IReadOnlyList<ICircuitSign> Signs => _signs;

    public void Observe(Loop loop)
    {
        foreach (var sign in _signs)
        {
            sign.Observe(loop);
        }

        var spray = _air.StoppedNats + _tray.StoppedNats + _contacts.StoppedNats;
        var circuit = _lines.IsOneAlone ? 0 : _tank.StoppedNats + _lines.StoppedNats + _place.StoppedNats;
        CanJudgeCirculation = loop.IsFresh(loop.Flow) && (loop.IsFresh(loop.Return) || loop.IsFresh(loop.Bottom));
        RunsForS = loop.IsEngineOn == true && loop.IsProven && circuit < 0 && _tank.StoppedNats < -2 ? RunsForS + loop.StepS : 0;
        LeavingNats = _lines.LeavingNats + spray;
        if (loop.IsEngineOn == true)
        {
            var counts = loop.IsProven && loop.EngineOnS > AfterStartS;
            StoppedNats = (counts ? Math.Max(0, circuit) : 0) + spray;
            IsStopped = counts && !loop.IsEngineInferred && circuit >= StoppedThresholdNats;
            IsLoss = StoppedNats >= StoppedThresholdNats
                && LeavingNats >= (loop.IsEngineInferred ? InferredLeavingNats : LeavingThresholdNats);
            return;
        }

        IsStopped = false;
        IsLoss = loop.IsEngineOn == false && !loop.IsEngineInferred && !_lines.IsOneAlone
            && loop.EngineOffS > (StoppedNats >= SpokeBeforeNats ? AfterStopQuietS : AfterStopSettledS) && loop.EngineOffS < AfterStopS
            && LeavingNats >= AfterStopLeavingNats && StoppedNats + LeavingNats >= AfterStopThresholdNats;
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
