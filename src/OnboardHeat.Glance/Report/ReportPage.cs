using System.Globalization;
using System.Reflection;
using System.Text;
using OnboardHeat.Core;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Report;

/// <summary>
/// The report as a page. It holds no script and forbids any, so that a note or a name in it can only be text; its
/// styles and charts are within it, so that it opens without a network and prints.
/// </summary>
internal sealed class ReportPage(ReportContent content, ReportClock clock, VanDescription van)
{
    private readonly StringBuilder _html = new();

    public string Write()
    {
        var title = content.IsShared ? "Hot water on a trip" : $"Hot water on a trip: {content.VanId}";
        Say($"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>{Text(title)}</title>");
        Say($"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        Say($"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">");
        _html.Append("<style>").Append(Styles()).Append("</style></head><body>");
        Say($"<h1>{Text(title)}</h1>");
        Say($"<p class=\"soft\">{Text(Span())}</p>");
        Sums();
        Undated();
        Charts();
        Insulation();
        Journeys();
        Events();
        Say($"<p class=\"soft\">Made by OnboardHeat, an instrument and no safety device. ");
        Say($"Figures are estimates from the van's own probes.</p>");
        Say($"</body></html>");
        return _html.ToString();
    }

    private static string Styles()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report/report.css")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    private static string Text(string text) => HtmlText.Of(text);

    private void Say(FormattableString text) => _html.Append(text.ToString(CultureInfo.InvariantCulture));

    private string Span() => content.IsShared
        ? $"{JourneyFigures.Length((content.To - content.From).TotalSeconds)} in all; times count from the start"
        : $"{clock.Moment(content.From)} to {clock.Moment(content.To)}";

    private void Sums()
    {
        var heating = content.Journeys.Where(one => one.Journey.Type == JourneyType.Heating).Select(one => one.Journey)
            .ToList();
        var draws = content.Journeys.Where(one => one.Journey.Type == JourneyType.Draw).Select(one => one.Journey)
            .ToList();
        var alarms = content.Events.Count(one => one is { Kind: "alarm", State: "raised" });
        Say($"<ul class=\"sums\"><li><b>{heating.Count}</b> heating runs");
        Say($"<li><b>{heating.Sum(j => j.GainedKWh):0.00} kWh</b> gained");
        if (heating.Count > 0)
        {
            Say($"<li><b>{heating.Max(j => j.PeakCelsius):0} °C</b> warmest water");
        }

        Say($"<li><b>{draws.Count}</b> draws<li><b>{Math.Abs(draws.Sum(j => j.GainedKWh)):0.00} kWh</b> drawn");
        Say($"<li><b>{alarms}</b> alarms</ul>");
    }

    private void Undated()
    {
        foreach (var run in content.Undated)
        {
            Say($"<p>Run {run.Run}: its clock was never known to be right; its dates are what it claimed.</p>");
        }
    }

    private void Charts()
    {
        var bands = content.Journeys.Where(one => one is { From: not null, To: not null })
            .Select(one => new SvgBand(PublicNames.Of(one.Journey.Type), one.From!.Value, one.To!.Value)).ToList();
        var marks = content.Events.Where(one => one.Utc is not null && (one.Kind != "alarm" || one.State == "raised"))
            .Where(one => !content.IsShared || one.Kind == "alarm").Select(one =>
                new SvgMark(one.Utc!.Value, one.Kind == "alarm")).ToList();
        Say($"<h2>Temperatures</h2>");
        var (from, to) = (content.From, content.To);
        var degrees = ReportLines.Temperatures(content.Lines);
        var temperatures = new SvgChart("Tank, coolant and surroundings", "°C", from, to, clock);
        _html.Append(temperatures.Draw(degrees, bands, marks));
        Say($"<p class=\"key\"><span><i class=\"box heating\"></i>heating run</span>");
        Say($"<span><i class=\"box standing\"></i>standing</span>");
        Say($"<span><i class=\"box draw\"></i>draw</span><span><i class=\"box stop\"></i>stop</span>");
        Say($"<span>▼ alarm</span><span>□ what people did</span></p>");
        _html.Append(new SvgChart("Stored heat", "kWh", from, to, clock)
            .Draw(ReportLines.Heat(content.Lines), bands, []));
        _html.Append(new SvgChart("Shower", "minutes", from, to, clock)
            .Draw(ReportLines.Shower(content.Lines), bands, []));
    }

    private void Insulation()
    {
        if (content.Insulation is not { } reviewed)
        {
            return;
        }

        Say($"<h2>Is the insulation better?</h2><p>{Text(InsulationWords.Of(reviewed.Answer))}</p>");
        foreach (var left in reviewed.LeftOut)
        {
            Say($"<p class=\"soft\">Left out: {Text(clock.Moment(left.Night.From))}, ");
            Say($"{JourneyFigures.Length(Length(left.Night))}: ");
            Say($"{Text(InsulationWords.Of(left.Why))}.</p>");
        }
    }

    private void Journeys()
    {
        Say($"<h2>Journeys</h2><table><thead><tr><th>When<th>What<th>Length<th>Figures</thead><tbody>");
        foreach (var one in content.Journeys)
        {
            var undated = one.Dating == RunDating.Undated ? " (clock not known to be right)" : "";
            var going = one.IsOpen ? ", going on" : "";
            Say($"<tr><td>{Text(clock.Moment(one.From) + undated)}");
            Say($"<td>{JourneyFigures.NameOf(one.Journey.Type)}{going}");
            Say($"<td>{JourneyFigures.Length(Length(one))}<td><ul>");
            foreach (var figure in JourneyFigures.Of(one.Journey, van, content.IsShared))
            {
                Say($"<li>{Text(figure)}");
            }

            Say($"</ul>");
        }

        Say($"</tbody></table>");
    }

    private void Events()
    {
        var shown = content.Events.Where(one => !content.IsShared || one.Kind == "alarm").ToList();
        Say($"<h2>{(content.IsShared ? "Alarms" : "Alarms, notes and actions")}</h2>");
        if (shown.Count == 0)
        {
            Say($"<p>None.</p>");
            return;
        }

        Say($"<table><thead><tr><th>When<th>What<th>{(content.IsShared ? "" : "Words")}</thead><tbody>");
        foreach (var one in shown)
        {
            // An alarm's sentence may name a part as its owner does.
            var words = content.IsShared ? "" : one.Text;
            Say($"<tr><td>{Text(clock.Moment(one.Utc))}<td>{Text($"{one.Name} {one.State}")}<td>{Text(words)}");
        }

        Say($"</tbody></table>");
    }

    private static double Length(DatedJourney one) => one.Journey.ToS - one.Journey.FromS;
}
