using OnboardHeat.Core.Watch;

namespace OnboardHeat.Suites;

/// <summary>An alarm that was raised (or cleared) in a drive.</summary>
internal readonly record struct Raised(double AtS, AlarmKind Kind, string Subject, bool IsRaised);
