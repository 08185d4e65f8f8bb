using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Demo;

namespace OnboardHeat.Daemon.Tests.Demonstrating;

public sealed class DemoPageTests
{
    private static readonly AlarmSnapshot s_loss = new(
        AlarmTable.Of(AlarmKind.CoolantLoss), "", AlarmState.Unacknowledged, true, 0,
        "the tray rose 9.2 K in 8 s while the engine ran, and the return stopped following the flow 12 s ago",
        [
            "Stop when it is safe, engine off.", "Let it cool: never open a hot cap.", "Close both isolation valves.",
            "Call for help.",
        ]);

    [Theory]
    [InlineData(72, 23)]
    [InlineData(80, 24)]
    [InlineData(92, 40)]
    public void Page_KeepsWithinTheTerminalAllDay(int width, int height)
    {
        foreach (var moment in Day())
        {
            var sheet = new Sheet(width, height);
            new DemoPage(new Ink(false)).Lay(sheet, WithAlarm(moment), "×200", ["11:42:10 told coolant-loss"]);
            var lines = sheet.Written().TrimEnd('\n').Split('\n');
            Assert.InRange(lines.Length, 10, height);
            Assert.All(lines, line => Assert.InRange(Sheet.Shown(line), 0, width));
        }
    }

    [Fact]
    public void CriticalAlarm_ShowsItsReasonAndEveryStepInOrder()
    {
        var sheet = new Sheet(80, 24);
        new DemoPage(new Ink(false)).Lay(sheet, WithAlarm(Day()[^1]), "×200", []);
        var text = sheet.Written();
        Assert.Contains("!! coolant-loss", text, StringComparison.Ordinal);
        Assert.Contains("9.2 K in 8 s", text, StringComparison.Ordinal);
        var places = s_loss.WhatToDo.Select(step => text.IndexOf(step, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Colours_TakeNoColumns()
    {
        var ink = new Ink(true);
        Assert.NotEqual("81.3 °C", ink.Warm(81.3, "81.3 °C"));
        Assert.Equal(7, Sheet.Shown(ink.Warm(81.3, ink.Bold("81.3 °C"))));
    }

    [Theory]
    [InlineData("6.2", "██▀▀▀▀")]
    [InlineData("1.0", "▄▄██")]
    public void BigFigures_AreThreeLinesOfTheSameWidth(string number, string begins)
    {
        var lines = Enumerable.Range(0, BigFigures.Lines).Select(line => BigFigures.Line(number, line)).ToList();
        Assert.StartsWith(begins, lines[0].TrimStart(), StringComparison.Ordinal);
        Assert.Single(lines.Select(l => l.Length).Distinct());
    }

    [Theory]
    [InlineData(14, "14 s")]
    [InlineData(99, "99 s")]
    [InlineData(380, "6 min 20 s")]
    [InlineData(600, "10 min")]
    [InlineData(7260, "2 h 1 min")]
    public void Spans_AreSaidAsPeopleSayThem(double seconds, string said) =>
        Assert.Equal(said, Words.Span(TimeSpan.FromSeconds(seconds)));

    private static DemoMoment WithAlarm(DemoMoment moment) =>
        moment with { Picture = moment.Picture with { Alarms = [s_loss, .. moment.Picture.Alarms] } };

    private static List<DemoMoment> Day()
    {
        var van = DemoDay.Begin(1);
        var monitor = new Core.Monitor(DemoDay.Description, KeptState.Fresh);
        List<DemoMoment> moments = [];
        while (van.Step())
        {
            var picture = monitor.Observe(van.Scan);
            if (van.Truth.ElapsedS % 300 == 0)
            {
                moments.Add(new DemoMoment(picture, van.Truth, van.Plan.Start.AddSeconds(van.Truth.ElapsedS)));
            }
        }

        return moments;
    }
}
