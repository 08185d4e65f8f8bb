using System.Text;
using System.Xml;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Glance.Report;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class TripReportTests
{
    private const string Hostile =
        "</script><script>alert(1)</script><img src=x onerror=alert(2)> & 'quoted' \"twice\"";

    [Fact]
    public async Task Report_HoldsChartsFiguresAlarmsAndNotes()
    {
        var html = await ReportAsync(Record(), isShared: false);
        Assert.Contains("Hot water on a trip: touring", html);
        Assert.True(html.Split("<svg viewBox=\"0 0 1000").Length > 1);
        Assert.Contains("Water 18.5 to 63.3 °C, warmest 63.5 °C", html);
        Assert.Contains("+1.30 kWh at", html);
        Assert.Contains("By coolant: +1.20 kWh in 55 min", html);
        Assert.Contains("40 °C after 21 min", html);
        Assert.Contains("above its rating for 3.3 min, by up to 0.9 K", html);
        Assert.Contains("coolant-loss raised", html);
        Assert.Contains("tray rose 9 K", html);
        Assert.Contains("Sat 23 May 2026", html);
    }

    [Fact]
    public async Task NoteAndPartName_StayText()
    {
        var html = await ReportAsync(Record(), isShared: false);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(2, html.Split("&lt;/script&gt;&lt;script&gt;alert(1)").Length - 1);
        Assert.Contains("default-src 'none'", html);
    }

    [Fact]
    public async Task Report_NeedsNothingFromElsewhere()
    {
        var html = await ReportAsync(Record(), isShared: false);
        foreach (var word in new[] { "http:", "https:", "src=", "href=", "url(", "@import", "<link" })
        {
            Assert.DoesNotContain(word, html.Replace(HtmlText.Of(Hostile), ""), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task SharedReport_LeavesOutVanDatesNotesAndWords()
    {
        var html = await ReportAsync(Record(), isShared: true);
        foreach (var word in new[] { "touring", "2026", " May", "alert(1)", "a quiet lake", "foam", "tray rose",
            "note", "Sat" })
        {
            Assert.DoesNotContain(word, html[html.IndexOf("<body", StringComparison.Ordinal)..],
                StringComparison.Ordinal);
        }

        Assert.Contains("coolant-loss raised", html);
        Assert.Contains("day 1, 11:06 h", html);
        Assert.Contains("flow-hose above its rating", html);
    }

    [Fact]
    public async Task Charts_AreSoundXml()
    {
        var html = await ReportAsync(Record(), isShared: false);
        var begin = html.IndexOf("<svg viewBox=\"0 0 1000", StringComparison.Ordinal);
        var svg = html[begin..(html.IndexOf("</svg>", begin, StringComparison.Ordinal) + 6)];
        var document = new XmlDocument();
        document.LoadXml(svg);
        Assert.True(document.SelectNodes("//path[@stroke]")!.Count >= 3);
        Assert.DoesNotContain("NaN", svg);
    }

    [Fact]
    public async Task NothingOnRecord_WritesNothing()
    {
        using var to = new MemoryStream();
        Assert.False(await Report(new HandRecord())
            .WriteAsync(new ReportRequest(null, null, false), to, CancellationToken.None));
        Assert.Equal(0, to.Length);
    }

    private static HandRecord Record()
    {
        var record = new HandRecord().Run(1, 0, 14);
        for (var s = 0; s < 50_000; s += 300)
        {
            record.Scan(1, s, 40 + (20 * Math.Sin(s / 9000.0)), 15, 70, s < 20_000);
        }

        SomeJourney.On(record, SomeJourney.Drive(1, 40_000, 43_600));
        record.Event(1, 500, "action", "note", "", Hostile).Event(1, 900, "action", "note", "", "a quiet lake")
            .Event(1, 1200, "mark", "changed", "insulation", "foam")
                .Event(1, 41_000, "alarm", "coolant-loss", "raised", "tray rose 9 K");
        return record;
    }

    private static TripReport Report(HandRecord record)
    {
        var van = new VanDescription
        {
            Fitted = new FittedSet([Channel.TankTop, Channel.TankBottom, Channel.Flow], [Signal.EngineRunning]),
            Circuit = new CircuitDescription { Parts = [new CircuitPart("flow-hose", Hostile, Channel.Flow, 90)] },
        };
        return new TripReport(record, van, "touring", new FakeTimeProvider());
    }

    private static async Task<string> ReportAsync(HandRecord record, bool isShared)
    {
        using var to = new MemoryStream();
        Assert.True(await Report(record)
            .WriteAsync(new ReportRequest(null, null, isShared), to, CancellationToken.None));
        return Encoding.UTF8.GetString(to.ToArray());
    }
}
