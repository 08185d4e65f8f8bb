using System.Text;
using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Adapters.Tests.Recordings;

public sealed class DriveWriterTests
{
    private static readonly FittedSet s_all = new(Channels.All.ToArray(), Signals.All.ToArray());

    [Fact]
    public void AnythingThatAScanCanHold_ReadsBackAsItWas()
    {
        const int seed = 41;
        var some = new SomeScans(seed);
        var written = Enumerable.Range(0, 500)
            .Select(i => some.Odd(1 + (i / 100), TimeSpan.FromMilliseconds(1 + (i * 1999)))).ToArray();
        var back = ReadBack(written);
        Assert.Equal(written.Length, back.Count);
        for (var i = 0; i < back.Count; i++)
        {
            var expected = written[i].Copy();
            foreach (var channel in Channels.All)
            {
                // No temperature is beyond a million degrees; such a one is written as what it is judged to be.
                expected[channel] = Math.Abs(expected[channel].Value) > 1e6
                    ? Reading.Failed(ReadingFault.OutOfRange) : expected[channel];
            }

            (expected.Utc, expected.IsUtcTrusted) = (back[i].Utc, back[i].IsUtcTrusted);
            Assert.Equal(
                "", ScanCompare.Difference(expected, back[i]) + (back[i].Utc == written[i].Utc ? "" : " date"));
        }
    }

    [Fact]
    public void SeveralActionsInOneScan_AllComeBackInTheirOrder()
    {
        PersonAction[] actions =
        [
            new(ActionKind.WorksBegin, "", ""), new(ActionKind.Changed, "hoses", "both, with new clamps"),
            new(ActionKind.Note, "", "10 %: =2+3"),
        ];
        var back = ReadBack([new Scan { Elapsed = TimeSpan.FromSeconds(
            4), Actions = actions, [Channel.TankTop] = Reading.Of(20.0625) }]);
        Assert.Equal(actions, Assert.Single(back).Actions);
    }

    [Fact]
    public void NoCell_BeginsAsAFormula()
    {
        var scan = new Scan
        {
            Actions = [new(ActionKind.Note, "", "x;=cmd"), new(ActionKind.Note, "", ",+1")],
            House = new HouseReport("", "=the card", false),
        };
        foreach (var cell in Text([scan]).Split('\n', ',', ';', '"').Where(cell => cell.Length > 0))
        {
            Assert.DoesNotContain(cell[0], "=+@");
        }
    }

    private static string Text(IEnumerable<Scan> scans)
    {
        using var text = new StringWriter();
        var writer = new DriveWriter(text, s_all);
        foreach (var scan in scans)
        {
            writer.Write(scan, scan.Utc);
        }

        return text.ToString();
    }

    private static List<Scan> ReadBack(IEnumerable<Scan> scans)
    {
        using var reader = RecordingReader.Open("export.csv", new MemoryStream(Encoding.UTF8.GetBytes(Text(scans))));
        var back = new List<Scan>();
        for (var scan = new Scan(); reader.Read(scan); scan = new Scan())
        {
            back.Add(scan);
        }

        return back;
    }
}
