namespace OnboardHeat.Daemon.Demo;

/// <summary>A temperature and when it was read.</summary>
internal readonly record struct TimedFigure(DateTimeOffset At, double Celsius);
