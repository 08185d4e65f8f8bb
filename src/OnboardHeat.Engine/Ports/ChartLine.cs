namespace OnboardHeat.Engine.Ports;

/// <summary>One line of a chart.</summary>
/// <param name="Column">The column asked for.</param>
/// <param name="Points">Its points in the order of time; spans without a value have none.</param>
public sealed record ChartLine(string Column, IReadOnlyList<ChartPoint> Points);
