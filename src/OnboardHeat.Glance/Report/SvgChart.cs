using System.Globalization;
using System.Text;

namespace OnboardHeat.Glance.Report;

/// <summary>Draws lines over time as an SVG picture that stands in the page itself.</summary>
internal sealed class SvgChart(string title, string unit, DateTimeOffset from, DateTimeOffset to, ReportClock clock)
{
    private const int Width = 1000, Height = 330, Left = 56, Right = 12, Top = 14, Bottom = 34;

    /// <summary>Labels of an axis: few enough to be read.</summary>
    private const int TicksAcross = 9, TicksUp = 6;

    /// <summary>A line is broken where this many spans have nothing.</summary>
    private const double GapShare = 0.012;

    private static readonly double[] s_hours = [0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 96, 168, 336, 720];

    private readonly StringBuilder _svg = new();
    private double _low;
    private double _high;

    /// <summary>
    /// The picture, with bands of time behind the lines and marks above them; empty where there is nothing to draw.
    /// </summary>
    public string Draw(IReadOnlyList<SvgLine> lines, IEnumerable<SvgBand> bands, IEnumerable<SvgMark> marks)
    {
        var drawn = lines.Where(line => line.Points.Count > 1).ToList();
        if (drawn.Count == 0)
        {
            return "";
        }

        Scale(drawn);
        Say($"<figure><figcaption>{Text(title)}, {Text(unit)}</figcaption>");
        Say($"<svg viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-label=\"{Text(title)}\">");
        foreach (var band in bands)
        {
            var (x, end) = (X(band.From), X(band.To));
            Say($"<rect class=\"band {band.Kind}\" x=\"{x:0.#}\" y=\"{Top}\" width=\"{Math.Max(1, end - x):0.#}\" ");
            Say($"height=\"{Height - Top - Bottom}\"/>");
        }

        Grid();
        foreach (var line in drawn)
        {
            Say($"<path d=\"{PathOf(line)}\" stroke=\"{line.Colour}\" stroke-dasharray=\"{line.Dash}\"/>");
        }

        foreach (var mark in marks)
        {
            var x = X(mark.At);
            Say($"<path class=\"mark\" d=\"M{x:0.#} {Top}V{Height - Bottom}\"/>");
            Say(mark.IsAlarm ? (FormattableString)$"<path class=\"alarm\" d=\"M{x - 7:0.#} 2h14l-7 12z\"/>"
                : $"<rect class=\"note\" x=\"{x - 5:0.#}\" y=\"3\" width=\"10\" height=\"10\"/>");
        }

        Say($"</svg><p class=\"key\">");
        foreach (var line in drawn)
        {
            Say($"<span><svg class=\"swatch\" viewBox=\"0 0 34 6\"><path d=\"M0 3H34\" stroke=\"{line.Colour}\" ");
            Say($"stroke-dasharray=\"{line.Dash}\"/></svg>{Text(line.Label)}</span> ");
        }

        Say($"</p></figure>");
        return _svg.ToString();
    }

    private static string Text(string text) => HtmlText.Of(text);

    private void Say(FormattableString text) => _svg.Append(text.ToString(CultureInfo.InvariantCulture));

    private double X(DateTimeOffset at) =>
        Left + (Math.Clamp((at - from) / (to - from), 0, 1) * (Width - Left - Right));

    private double Y(double value) => Top + ((_high - value) / (_high - _low) * (Height - Top - Bottom));

    private void Scale(List<SvgLine> lines)
    {
        var low = lines.Min(line => line.Points.Min(point => point.Mean));
        var high = lines.Max(line => line.Points.Max(point => point.Mean));
        var step = Step((high - low) / TicksUp);
        (_low, _high) = (Math.Floor(low / step) * step, Math.Ceiling(high / step) * step);
        _high = _high <= _low ? _low + step : _high;
    }

    private void Grid()
    {
        var step = Step((_high - _low) / TicksUp);
        for (var value = _low; value <= _high + (step / 2); value += step)
        {
            Say($"<path class=\"grid\" d=\"M{Left} {Y(value):0.#}H{Width - Right}\"/>");
            Say($"<text x=\"{Left - 6}\" y=\"{Y(value) + 5:0.#}\" text-anchor=\"end\">{value:0.##}</text>");
        }

        var hours = s_hours.FirstOrDefault(h => (to - from).TotalHours / h <= TicksAcross, s_hours[^1]);
        var apart = TimeSpan.FromHours(hours);
        for (var at = clock.RoundUp(from, apart); at <= to; at += apart)
        {
            Say($"<path class=\"grid\" d=\"M{X(at):0.#} {Top}V{Height - Bottom}\"/>");
            Say($"<text x=\"{X(at):0.#}\" y=\"{Height - 10}\" text-anchor=\"middle\">");
            Say($"{Text(clock.Tick(at, hours >= 24))}</text>");
        }
    }

    private string PathOf(SvgLine line)
    {
        var path = new StringBuilder();
        DateTimeOffset? before = null;
        foreach (var point in line.Points)
        {
            var isBroken = before is not { } last || (point.At - last) / (to - from) > GapShare;
            path.Append(string.Create(CultureInfo.InvariantCulture,
                $"{(isBroken ? 'M' : 'L')}{X(point.At):0.#} {Y(point.Mean):0.#}"));
            before = point.At;
        }

        return path.ToString();
    }

    /// <summary>A round step of 1, 2 or 5 that is not smaller.</summary>
    private static double Step(double wanted)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(wanted, 1e-6))));
        return (wanted / power) switch { <= 1 => power, <= 2 => 2 * power, <= 5 => 5 * power, _ => 10 * power };
    }
}
