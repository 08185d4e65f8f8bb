using OnboardHeat.Core.Watch;

namespace OnboardHeat.Daemon.Demo;

/// <summary>An alarm that was raised, and how much coolant had really gone by then.</summary>
internal readonly record struct TimedAlarm(DateTimeOffset At, AlarmChange Change, double LostLitres);
