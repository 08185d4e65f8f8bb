namespace OnboardHeat.Daemon.Probing;

/// <summary>One probe: what hangs on the bus, and what the configuration says of it.</summary>
/// <param name="Rom">Its address.</param>
/// <param name="Channels">
/// The places that the configuration gives it: one as a rule, none for a stranger, two by mistake.
/// </param>
/// <param name="IsOnBus">Whether the bus lists it.</param>
/// <param name="Celsius">What it reads, both offsets added; null where there is no reading.</param>
/// <param name="Fault">Why there is none; empty where there is one.</param>
/// <param name="OwnerOffsetKelvin">The owner's offset, signed kelvin.</param>
/// <param name="LearntOffsetKelvin">What a pair check learnt, signed kelvin.</param>
internal sealed record ProbeSight(
    string Rom, IReadOnlyList<string> Channels, bool IsOnBus, double? Celsius, string Fault, double OwnerOffsetKelvin,
    double LearntOffsetKelvin);
