using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core;

/// <summary>What was learnt of this van. It lives in its own small file and is read before the first scan.</summary>
public sealed record LearntVan
{
    /// <summary>Nothing is learnt yet.</summary>
    public static LearntVan Nothing { get; } = new();

    /// <summary>The tank: losses, probes, draws.</summary>
    public LearntTank Tank { get; init; } = new();

    /// <summary>The coolant circuit: coil, warm-up.</summary>
    public LearntCircuit Circuit { get; init; } = new();
}
