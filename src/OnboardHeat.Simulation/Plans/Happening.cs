using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>One thing that happens in a plan.</summary>
/// <param name="AtS">When, seconds from the start.</param>
/// <param name="Kind">What.</param>
/// <param name="LengthS">For how long; infinite when it stays.</param>
/// <param name="Size">How much; its meaning and unit come with the kind.</param>
/// <param name="On">The probe it concerns, if any.</param>
public readonly record struct Happening(
    double AtS, HappeningKind Kind, double LengthS = double.PositiveInfinity, double Size = 1, Channel On = default)
{
    /// <summary>Whether coolant leaves the circuit by it.</summary>
    public bool IsCoolantLoss => Kind is >= HappeningKind.TankFlowHoseOff and <= HappeningKind.Weep;
}
