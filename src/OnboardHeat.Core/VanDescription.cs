using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core;

/// <summary>
/// The facts of one van that a person states: what is fitted, and how it is used. Everything else is learnt.
/// </summary>
public sealed record VanDescription
{
    /// <summary>The tank and its water.</summary>
    public TankDescription Tank { get; init; } = new();

    /// <summary>How the shower is taken.</summary>
    public ShowerDescription Shower { get; init; } = new();

    /// <summary>The coolant circuit and its parts.</summary>
    public CircuitDescription Circuit { get; init; } = new();

    /// <summary>Whether it has a lamp or a buzzer that can be tested; default false.</summary>
    public bool HasLampOrBuzzer { get; init; }

    /// <summary>Which probes and signals are there.</summary>
    public required FittedSet Fitted { get; init; }
}
