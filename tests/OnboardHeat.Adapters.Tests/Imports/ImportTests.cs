using System.Text;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Imports;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Adapters.Tests.Imports;

public sealed class ImportTests
{
    [Fact]
    public void CommasAndLocalTimesWithAPreamble_AreUnderstood()
    {
        const string text =
            "Logger 7;Serial 0042\nDatum;Boiler oben;Vorlauf\n03.05.2026 09:12:41;41,5;---\n03.05.2026 09:12:51;41,25 "
                + "°C;60,125\n";
        var scans = Import(text, Wish("Europe/Zurich", "Boiler oben=tank_top", "3=flow"), out var said);
        Assert.Equal(2, scans.Count);

        // Zurich is two hours ahead of UTC in summer (IANA time zone database, zone Europe/Zurich).
        Assert.Equal(new DateTimeOffset(2026, 5, 3, 7, 12, 41, TimeSpan.Zero), scans[0].Utc);
        Assert.Equal((41.5, false), (scans[0][Channel.TankTop].Value, scans[0][Channel.Flow].HasValue));
        Assert.Equal((41.25, 60.125), (scans[1][Channel.TankTop].Value, scans[1][Channel.Flow].Value));
        Assert.Contains("columns parted by semicolons, decimal comma, header in row 2", said, StringComparison.Ordinal);
        Assert.Contains("'03.05.2026 09:12:41' is 2026-05-03T07:12:41Z", said, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoColumnsWithoutAHeader_NeedNothingButTheChannel()
    {
        var scans = Import("2026-05-03T09:00:00Z,20.5\n2026-05-03T09:00:02.5Z,20.75\n", Wish(null, "tank_top"), out _);
        Assert.Equal([(0, 20.5), (2.5, 20.75)],
            scans.Select(scan => (scan.Elapsed.TotalSeconds, scan[Channel.TankTop].Value)));
    }

    [Fact]
    public void TwoColumnFilesOfEachProbe_AreMergedByTime()
    {
        var wish = Wish(null, "top.csv=tank_top", "flow.csv=flow");
        var import = new RecordingImport(
            [File("top.csv", "1780000000,50\n1780000010,51\n"), File("flow.csv", "1780000005,70\n1780000010,71\n")],
            wish);
        var scans = Read(import);
        Assert.Equal(3, scans.Count);
        Assert.Equal((51, 71), (scans[2][Channel.TankTop].Value, scans[2][Channel.Flow].Value));

        // POSIX time 1780000000 is this moment (date -u -d @1780000000).
        Assert.Equal(new DateTimeOffset(2026, 5, 28, 20, 26, 40, TimeSpan.Zero), scans[0].Utc);
    }

    [Fact]
    public void HourThatClocksShowTwice_KeepsTheOrderOfTheRows()
    {
        // Clocks in the European Union go back from 3:00 to 2:00 on the last Sunday of October (Directive 2000/84/EC).
        const string text =
            "time,tank_top\n2026-10-25 02:30,50\n2026-10-25 02:55,49\n2026-10-25 02:10,48\n2026-10-25 03:10,47\n";
        var scans = Import(text, Wish("Europe/Berlin"), out var said);
        Assert.Equal([0, 25, 40, 100], scans.Select(scan => scan.Elapsed.TotalMinutes));
        Assert.Contains("3 rows lie in the hour that clocks show twice", said, StringComparison.Ordinal);
    }

    [Fact]
    public void DateAndTimeOfDayInColumnsOfTheirOwn_AreJoined()
    {
        var scans = Import("Date,Time,Temp\n05/28/2026,1:05:09 PM,30\n05/28/2026,1:05:10 PM,31\n",
            Wish("UTC", "Temp=tank_bottom"), out _);
        Assert.Equal(new DateTimeOffset(2026, 5, 28, 13, 5, 9, TimeSpan.Zero), scans[0].Utc);
    }

    [Theory]
    [InlineData("time,tank_top\n2026-05-03 09:00,20\n", "say with --zone")]
    [InlineData("time,tank_top\n05/03/2026 09:00Z,20\n", "say with --date-order")]
    [InlineData("time;tank_top\n2026-05-03 09:00Z;20,5\n2026-05-03 09:01Z;20.5\n", "say with --decimal")]
    [InlineData("time,Temp 1\n2026-05-03 09:00Z,20\n", "columns are 2 'Temp 1'")]
    [InlineData("time,tank_top\n2026-05-03 09:00Z,20\n2026-05-03 08:59Z,20\n",
        "line 3, column time: '2026-05-03 08:59Z' lies before")]
    [InlineData("time,tank_top\n2026-05-03 09:00Z,20\n2026-05-03 09:01Z,warm\n",
        "line 3, column tank_top: 'warm' is no number")]
    [InlineData("time,tank_top,flow\n2026-05-03 09:00Z,20,30\n2026-05-03 09:01Z,20\n", "line 3: 2 cells where 3")]
    [InlineData("just words\nand more\n", "no mark parts its lines")]
    public void WhatCouldBeWrong_IsRefusedWithTheWordsThatSettleIt(string text, string words)
    {
        var refused = Assert.Throws<RecordingException>(() => Import(text, new ImportWish(), out _));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TimeThatClocksLeapOver_IsRefused()
    {
        // Clocks in the European Union go forward from 2:00 to 3:00 on the last Sunday of March (Directive 2000/84/EC).
        var refused = Assert.Throws<RecordingException>(
            () => Import("time,tank_top\n2026-03-29 02:30,20\n", Wish("Europe/Rome"), out _));
        Assert.Contains("clocks leap over it", refused.Message, StringComparison.Ordinal);
    }

    private static ImportWish Wish(string? zoneName, params string[] maps)
    {
        ImportZone? zone = null;
        Assert.True(zoneName is null || ImportZone.TryParse(zoneName, out zone));
        return new ImportWish
        {
            Zone = zone,
            Mappings = [.. maps.Select(map => ImportMapping.TryParse(map, out var mapping) ? mapping
            : throw new ArgumentException(map))],
        };
    }

    private static (string Name, Func<Stream> Open) File(string name, string text) =>
        (name, () => new MemoryStream(Encoding.UTF8.GetBytes(text)));

    private static List<Scan> Import(string text, ImportWish wish, out string said)
    {
        var import = new RecordingImport([File("logger.csv", text)], wish);
        said = string.Join('\n', import.Understand());
        return Read(import);
    }

    private static List<Scan> Read(RecordingImport import)
    {
        using var text = new StringWriter();
        import.Write(text);
        using var reader = RecordingReader.Open("imported", new MemoryStream(Encoding.UTF8.GetBytes(text.ToString())));
        var scans = new List<Scan>();
        for (var scan = new Scan(); reader.Read(scan); scan = new Scan())
        {
            scans.Add(scan);
        }

        return scans;
    }
}
