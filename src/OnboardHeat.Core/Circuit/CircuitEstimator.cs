using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Circuit;

/// <summary>Follows the coolant circuit from scan to scan: does the engine run, does coolant pass the coil.</summary>
internal sealed class CircuitEstimator(LearntCircuit learnt)
{
    /// <summary>The estimate after the newest scan.</summary>
    public CircuitEstimate Current { get; private set; } = CircuitEstimate.Unknown;

    /// <summary>Takes a scan.</summary>
    public void Observe(ScreenedScan scan, TankEstimate tank)
    {
        var running = scan[Signal.EngineRunning];
        if (running != Current.IsEngineRunning)
        {
            Current = Current with { IsEngineRunning = running };
        }
    }

    /// <summary>What is worth keeping.</summary>
    public LearntCircuit Learnt() => learnt;
}
