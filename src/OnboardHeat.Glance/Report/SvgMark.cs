namespace OnboardHeat.Glance.Report;

/// <summary>Something that happened, above the lines: a triangle for an alarm, a square for what people did.</summary>
/// <param name="At">When.</param>
/// <param name="IsAlarm">Whether it is an alarm.</param>
internal readonly record struct SvgMark(DateTimeOffset At, bool IsAlarm);
