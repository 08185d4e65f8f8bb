using System.Text;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Replaying;

/// <summary>What looks odd and is in order is answered like its plain form.</summary>
public sealed class GoodInputTests : IDisposable
{
    private const string Plain =
        "time,tank_top,tank_bottom,action\n2026-05-03T09:00:00Z,40,20,\n2026-05-03T09:00:02Z,41,21,note:hot\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ByteOrderMark_ChangesNothing() =>
        AssertSame([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Plain)]);

    [Fact]
    public void CarriageReturns_ChangeNothing() => AssertSame(Plain.ReplaceLineEndings("\r\n"));

    [Fact]
    public void MissingLastLineEnd_ChangesNothing() => AssertSame(Plain.TrimEnd('\n'));

    [Fact]
    public void EmptyLinesAtTheEnd_ChangeNothing() => AssertSame(Plain + "\n\r\n");

    [Fact]
    public void OtherOrderOfColumns_ChangesNothing() => AssertSame(
        "action,tank_bottom,time,tank_top\n,20,2026-05-03T09:00:00Z,40\nnote:hot,21,2026-05-03T09:00:02Z,41\n");

    [Fact]
    public void QuotedCells_ChangeNothing() => AssertSame(
        "\"time\",\"tank_top\",tank_bottom,action\n2026-05-03T09:00:00Z,\"40\",20,\"\"\n"
        + "\"2026-05-03T09:00:02Z\",41,21,\"note:hot\"\n");

    [Fact]
    public void OtherOffset_ChangesNothing() => AssertSame(
        Plain.Replace("T09", "T11", StringComparison.Ordinal).Replace("Z", "+02:00", StringComparison.Ordinal));

    [Fact]
    public void RowsOfEqualTime_AreOneScan() => AssertSame(
        "time,tank_top,tank_bottom,action\n2026-05-03T09:00:00Z,40,,\n2026-05-03T09:00:00Z,,20,\n"
        + "2026-05-03T09:00:02Z,,21,\n2026-05-03T09:00:02Z,41,,note:hot\n");

    [Fact]
    public void EmptyCellAndScientificForm_AreTaken() => Assert.Equal(
        ExitCode.Done,
        ReplayCall.Of([_folder.Write(
            "a.csv",
            "time,tank_top,flow\n2026-05-03T09:00:00Z,4.05e1,\n2026-05-03T09:00:00.25Z,-0.0625,+85\n")]).ExitCode);

    private void AssertSame(string text) => AssertSame(Encoding.UTF8.GetBytes(text));

    private void AssertSame(byte[] bytes)
    {
        var file = _folder.Write("drive.csv", Plain);
        var plain = ReplayCall.Of([file], everyS: 1);
        _folder.Write("drive.csv", bytes);
        var odd = ReplayCall.Of([file], everyS: 1);

        Assert.Equal((ExitCode.Done, "", 2), (plain.ExitCode, plain.Errors, plain.Of("status").Length));
        Assert.Equal(plain, odd);
    }
}
