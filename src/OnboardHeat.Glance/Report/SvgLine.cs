using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Glance.Report;

/// <summary>One line of a printed chart.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Colour">Colour as in the review.</param>
/// <param name="Dash">Dash pattern, so that colour is never alone; empty for an unbroken line.</param>
/// <param name="Points">Its points in the order of time.</param>
internal sealed record SvgLine(string Label, string Colour, string Dash, IReadOnlyList<ChartPoint> Points);
