using OnboardHeat.Core.Scans;

namespace OnboardHeat.Probes.OneWire;

/// <summary>One probe as the owner fitted it.</summary>
/// <param name="Channel">Where it sits.</param>
/// <param name="Rom">Its address.</param>
/// <param name="OffsetKelvin">
/// Added to what it reads: the owner's figure plus what a pair check learnt; signed kelvin.
/// </param>
public sealed record ProbeFitting(Channel Channel, string Rom, double OffsetKelvin);
