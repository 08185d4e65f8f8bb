using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Circuit;

/// <summary>A fitted part that has a highest temperature of its own, such as a hose.</summary>
/// <param name="Id">Short name, <c>[a-z0-9-]{1,32}</c>: the subject of its alarms.</param>
/// <param name="Name">What the owner calls it.</param>
/// <param name="On">The channel that tells how hot it is.</param>
/// <param name="MaxCelsius">Its rating in degrees Celsius, 30 to 200.</param>
public sealed record CircuitPart(string Id, string Name, Channel On, double MaxCelsius);
