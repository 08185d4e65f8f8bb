using System.Globalization;

namespace OnboardHeat.Core.Circuit.Signs;

/// <summary>
/// How fast the lines cool: a bared pipe several times faster than the same pipe full of still coolant. How this van's
/// full lines cool is learnt at every stop that was in order. It says nothing of 'stopped': an engine that loses heat
/// takes full lines down with it.
/// </summary>
internal sealed class LineDecaySign : ICircuitSign
{
    /// <summary>Slopes are taken over this, seconds, and their word is smoothed over that.</summary>
    private const double WindowS = 24, SmoothS = 10;

    /// <summary>
    /// A stop teaches from here to there after the engine has stopped, seconds: walls and coil have settled by then.
    /// </summary>
    private const double LearnFromS = 45, LearnUntilS = 125;

    /// <summary>What may be learnt as normal at most: more is the suspicion of a loss.</summary>
    private const double SuspectNats = 1;

    /// <summary>
    /// Time constants of full lines in an unknown van, seconds: the middle of some hundred recorded stops.
    /// </summary>
    private const double FlowTauS = 2300, ReturnTauS = 2000;

    private PipeDecay? _flow, _return;
    private double _leaving, _flowTauS, _returnTauS;
    private bool _mayLearn;

    public string Name => "line-decay";

    public bool IsHealthy { get; private set; }

    public double StoppedNats => 0;

    public double LeavingNats => IsHealthy ? _leaving : 0;

    /// <summary>Whether this van's own full lines are known.</summary>
    public bool IsVanKnown => _flow is { Stops: > 0 } && _return is { Stops: > 0 };

    /// <summary>
    /// How fast the slower line falls as a share of what it does full and still: about one where nothing comes any
    /// more, zero while it is kept warm.
    /// </summary>
    public double StillShare { get; private set; }

    /// <summary>What is worth keeping of flow and return line.</summary>
    public (Quantities.Estimate? Flow, Quantities.Estimate? Return) Learnt => (_flow?.Learnt, _return?.Learnt);

    public void Observe(Loop loop)
    {
        _flow ??= new PipeDecay(FlowTauS, loop.Learnt.FlowDecayPerS);
        _return ??= new PipeDecay(ReturnTauS, loop.Learnt.ReturnDecayPerS);
        IsHealthy = loop.TrySlope(loop.Flow, WindowS, out var flow);
        IsHealthy &= loop.TrySlope(loop.Return, WindowS, out var back);
        if (!IsHealthy)
        {
            _leaving = StillShare = 0;
            return;
        }

        var flowRate = Rate(flow, loop);
        var returnRate = Rate(back, loop);
        _flowTauS = 1 / Math.Max(flowRate, 1e-4);
        _returnTauS = 1 / Math.Max(returnRate, 1e-4);
        StillShare = Math.Min(flowRate / _flow.FullPerS, returnRate / _return.FullPerS);
        var now = _flow.Leaving(flowRate, Blur(flow, loop)) + _return.Leaving(returnRate, Blur(back, loop));
        _leaving += (now - _leaving) * (1 - Math.Exp(-loop.StepS / SmoothS));
    }

    /// <summary>Learns from a stop once it is old enough, if nothing in it was suspect.</summary>
    public void LearnFromStop(Loop loop, bool isSuspect)
    {
        if (loop.IsEngineOn != false)
        {
            _mayLearn = loop.IsEngineOn == true && loop.IsProven && !isSuspect;
            return;
        }

        _mayLearn &= !isSuspect && (loop.EngineOffS < LearnFromS || _leaving < SuspectNats);
        if (!_mayLearn || loop.EngineOffS < LearnUntilS || _flow is null || _return is null)
        {
            return;
        }

        _mayLearn = false;
        if (loop.TrySlope(loop.Flow, LearnUntilS - LearnFromS, out var flow)
            && loop.TrySlope(loop.Return, LearnUntilS - LearnFromS, out var back)
            && Math.Min(flow.Celsius, back.Celsius) > loop.AirCelsius + 15 && Math.Min(-flow.KPerS, -back.KPerS) > 0)
        {
            _flow.Learn(Rate(flow, loop));
            _return.Learn(Rate(back, loop));
        }
    }

    public string Words(Loop loop) => string.Create(
        CultureInfo.InvariantCulture,
        $"lines cool with {_flowTauS:0} s (flow) and {_returnTauS:0} s (return)");

    private static double Rate(Slope slope, Loop loop) => -slope.KPerS / Math.Max(10, slope.Celsius - loop.AirCelsius);

    private static double Blur(Slope slope, Loop loop) =>
        slope.DeviationKPerS / Math.Max(10, slope.Celsius - loop.AirCelsius);
}
