using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Glance.Report;

/// <summary>The lines of a report's charts. Colours and dashes are those of the review.</summary>
internal static class ReportLines
{
    private static readonly (Channel Channel, string Label, string Colour, string Dash)[] s_channels =
    [
        (Channel.TankTop, "tank top", "#b3360b", ""), (Channel.TankMiddle, "tank middle", "#c7691a", "2 4"),
        (Channel.TankBottom, "tank bottom", "#8a6d00", "10 4"), (Channel.Flow, "coolant in", "#7a1fa2", ""),
        (Channel.Return, "coolant back", "#a35bc2", "8 4"), (Channel.EngineCoolant, "engine coolant", "#c2185b", "2 2"),
        (Channel.Surroundings, "surroundings", "#2f6f4f", "4 4"), (Channel.Tray, "tray", "#1f6fb2", "8 3 2 3"),
        (Channel.Outlet, "outlet", "#00796b", "12 4"), (Channel.ColdSupply, "cold supply", "#455a64", "3 6"),
    ];

    public static IReadOnlyList<SvgLine> Temperatures(IReadOnlyList<ChartLine> lines) =>
        [.. s_channels.Select(c =>
            new SvgLine(c.Label, c.Colour, c.Dash, PointsOf(lines, Channels.NameOf(c.Channel))))];

    public static IReadOnlyList<SvgLine> Heat(IReadOnlyList<ChartLine> lines) =>
        [new SvgLine("heat above the cold supply", "#b3360b", "", PointsOf(lines, FigureNames.StoredEnergyKWh))];

    public static IReadOnlyList<SvgLine> Shower(IReadOnlyList<ChartLine> lines) =>
        [new SvgLine("minutes of mixed water", "#123f6b", "", PointsOf(lines, FigureNames.ShowerMinutes))];

    private static IReadOnlyList<ChartPoint> PointsOf(IReadOnlyList<ChartLine> lines, string column) =>
        lines.FirstOrDefault(line => line.Column == column)?.Points ?? [];
}
