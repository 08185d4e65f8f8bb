namespace OnboardHeat.Core.Screening;

/// <summary>One look at a line and what stands beside it. NaN where it was not believed.</summary>
/// <param name="AtS">Elapsed seconds.</param>
/// <param name="Line">The line, degrees Celsius.</param>
/// <param name="Partner">The other line, degrees Celsius.</param>
/// <param name="TankMean">Mean of the tank probes, degrees Celsius; NaN without any.</param>
/// <param name="Tray">The tray, degrees Celsius; NaN without one.</param>
internal readonly record struct LineSample(double AtS, double Line, double Partner, double TankMean, double Tray);
