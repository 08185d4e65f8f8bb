namespace OnboardHeat.Engine.Ports;

/// <summary>What a column did in one span of a chart; unit of the column.</summary>
/// <param name="At">Middle of the span.</param>
/// <param name="Min">Lowest value.</param>
/// <param name="Mean">Mean of the values.</param>
/// <param name="Max">Highest value.</param>
public readonly record struct ChartPoint(DateTimeOffset At, double Min, double Mean, double Max);
