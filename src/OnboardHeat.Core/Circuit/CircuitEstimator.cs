using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Follows the coolant circuit from scan to scan: does the engine run, does coolant pass the coil, is coolant leaving.
/// The signs look at the loop, the test adds them up, the watchers put it into words.
/// </summary>
internal sealed class CircuitEstimator(VanDescription van, LearntCircuit learnt)
{
    private readonly EngineSense _engine = new();
    private bool _wasTold;

    /// <summary>The estimate after the newest scan.</summary>
    public CircuitEstimate Current { get; private set; } = CircuitEstimate.Unknown;

    /// <summary>What the signs look at.</summary>
    public Loop Loop { get; } = new(van, learnt);

    /// <summary>What the signs add up to.</summary>
    public LossTest Test { get; } = new();

    /// <summary>Takes a scan.</summary>
    public void Observe(ScreenedScan scan, TankEstimate tank)
    {
        Loop.Observe(scan);
        _engine.Observe(Loop, scan[Signal.EngineRunning]);
        Test.Observe(Loop);
        var isTold = Test.IsLoss || Test.IsStopped;
        bool? isCirculating = Loop.IsEngineOn switch
        {
            true when isTold => false,
            true => Loop.IsProven ? true : null,
            false => false,
            null => null,
        };
        if (Loop.IsEngineOn != Current.IsEngineRunning || Loop.IsEngineInferred != Current.IsEngineInferred
            || isCirculating != Current.IsCirculating || (isTold && !_wasTold))
        {
            Current = new CircuitEstimate
            {
                IsEngineRunning = Loop.IsEngineOn,
                IsEngineInferred = Loop.IsEngineInferred,
                IsCirculating = isCirculating,
                Evidence = isTold && !_wasTold ? Test.Evidence(Loop) : Current.Evidence,
            };
        }

        _wasTold = isTold;
    }

    /// <summary>What is worth keeping.</summary>
    public LearntCircuit Learnt() => Test.Learnt(learnt);
}
