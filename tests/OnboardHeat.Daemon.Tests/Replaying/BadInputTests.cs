using System.Text;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Replaying;

/// <summary>
/// Whatever is wrong with a recording is one line that names the place, exit 65, and no output before it.
/// </summary>
public sealed class BadInputTests : IDisposable
{
    private const string Header = "time,tank_top,engine_running,action\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("2026-05-03T09:00:00Z,NaN,,", "line 2, column tank_top", "'NaN' is no temperature")]
    [InlineData("2026-05-03T09:00:00Z,1e308,,", "line 2, column tank_top", "'1e308' is no temperature")]
    [InlineData("2026-05-03T09:00:00Z,1e400,,", "line 2, column tank_top", "'1e400' is no temperature")]
    [InlineData("2026-05-03T09:00:00Z,Infinity,,", "line 2, column tank_top", "'Infinity' is no temperature")]
    [InlineData(
        "2026-05-03T09:00:00Z,\"1,5\",,", "line 2, column tank_top", "'1,5' is no temperature; decimals take a point")]
    [InlineData(
        "2026-05-03T09:00:00Z,1,5,,", "line 2", "5 cells under a header of 4; decimals take a point, not a comma")]
    [InlineData("2026-05-03T09:00:00Z,40", "line 2", "2 cells under a header of 4")]
    [InlineData("2026-05-03T09:00:00Z,warm,,", "line 2, column tank_top", "'warm' is no temperature")]
    [InlineData(
        "2026-05-03T09:00:00Z,40,yes,", "line 2, column engine_running", "'yes' is no signal; those are 0 or 1")]
    [InlineData("2026-05-03T09:00:00Z,40,,dance", "line 2, column action", "'dance' is no action")]
    [InlineData(
        "2026-05-03T09:00:00,40,,", "line 2, column time", "'2026-05-03T09:00:00' is no ISO 8601 time with an offset")]
    [InlineData("2026-02-30T09:00:00Z,40,,", "line 2, column time", "is no ISO 8601 time")]
    [InlineData("03.05.2026 09:00,40,,", "line 2, column time", "is no ISO 8601 time")]
    [InlineData(",40,,", "line 2, column time", "is empty")]
    public void CellThatCannotBeTaken_IsNamedWithItsPlace(string row, string place, string what) =>
        AssertRefused(Header + row + "\n", place, what);

    [Fact]
    public void TimeGoesBack_IsRefusedAtTheRowThatDoes() => AssertRefused(
        Header + "2026-05-03T09:00:02Z,40,,\n2026-05-03T09:00:04Z,40,,\n2026-05-03T09:00:03.5Z,40,,\n",
        "line 4, column time",
        "goes back by 0.5 s");

    [Fact]
    public void ElapsedGoesBackWithinARun_IsRefused() => AssertRefused(
        "run,elapsed_s,tank_top\n1,0,40\n1,10,40\n1,9,40\n", "line 4, column elapsed_s", "goes back by 1 s");

    [Fact]
    public void RunGoesBack_IsRefused() => AssertRefused(
        "run,elapsed_s,tank_top\n2,0,40\n1,10,40\n", "line 3, column run", "goes back from 2 to 1");

    [Fact]
    public void ChannelTwiceAtTheSameTime_IsRefusedAtTheSecond() => AssertRefused(
        Header + "2026-05-03T09:00:02Z,40,,\n2026-05-03T11:00:02+02:00,41,,\n", "line 3, column tank_top",
        "given twice at the same time");

    [Theory]
    [InlineData("time,tank_top,tank_top\n", "line 1, column tank_top", "the header names this column twice")]
    [InlineData("time,tank_top,bath\n", "line 1, column 3", "'bath' is no column of a recording")]
    [InlineData("time,Tank_Top\n", "line 1, column 2", "'Tank_Top' is no column of a recording")]
    [InlineData("tank_top,flow\n", "line 1", "the header has neither 'time' nor 'elapsed_s'")]
    [InlineData("time,engine_running\n", "line 1", "the header has no temperature channel")]
    [InlineData("time;tank_top\n", "line 1, column 1", "'time;tank_top' is no column of a recording")]
    public void HeaderThatCannotBeTaken_IsNamedWithItsPlace(string header, string place, string what) =>
        AssertRefused(header + "2026-05-03T09:00:00Z,40,41\n", place, what);

    [Fact]
    public void EmptyFile_IsSaid() => AssertRefused("", "", "the file is empty");

    [Fact]
    public void HeaderOnly_IsSaid() => AssertRefused(Header, "", "there is a header and no row");

    [Fact]
    public void TenMegabyteLine_IsRefusedByItsLengthAndLine() => AssertRefused(
        Header + "2026-05-03T09:00:00Z,40,,\n" + new string('7', 10_000_000) + "\n", "line 3",
        "the line is 10000000 characters long");

    [Fact]
    public void QuoteLeftOpenOverTwentyMegabytes_IsRefusedByItsLine() => AssertRefused(
        Header + "2026-05-03T09:00:00Z,40,,\n\"" + string.Concat(
            Enumerable.Repeat("2026-05-03T09:00:00Z,40,,\n", 800_000)),
        "line 3",
        "open quote");

    [Fact]
    public void Picture_IsNoRecording()
    {
        // GIVEN the first bytes of a PNG file (RFC 2083, section 3.1) and some noise after it
        byte[] bytes = [
            0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A,
            .. Enumerable.Range(0, 5000).Select(i => (byte)((i * 167) ^ (i >> 3)))];
        var file = _folder.Write("photo.csv", bytes);

        AssertRefused(file, "line 1, column 1", "is no column of a recording");
    }

    [Fact]
    public void NoteThatIsNoUtf8_IsRefusedAtItsCell()
    {
        var file = _folder.Write(
            "latin.csv", Encoding.Latin1.GetBytes(Header + "2026-05-03T09:00:00Z,40,,note:caf\u00e9\n"));

        AssertRefused(file, "line 2, column action", "is no action");
    }

    [Fact]
    public void MissingFileAndFolder_AreSaid()
    {
        AssertRefused(_folder["nothing.csv"], "", "there is no such file");
        AssertRefused(_folder.Path, "", "it is a folder");
    }

    [Fact]
    public void SecondFileIsBad_FirstIsNotAnsweredEither()
    {
        var good = _folder.Write("good.csv", Header + "2026-05-03T09:00:00Z,40,,\n");
        var bad = _folder.Write("bad.csv", Header + "2026-05-03T09:00:00Z,40,,\n2026-05-03T09:00:01Z,x,,\n");

        var outcome = ReplayCall.Of([good, bad], everyS: 1);

        Assert.Equal((ExitCode.BadInput, ""), (outcome.ExitCode, outcome.Output));
        Assert.StartsWith($"{bad}: line 3, column tank_top: ", outcome.Errors, StringComparison.Ordinal);
    }

    private void AssertRefused(string textOrFile, string place, string what)
    {
        var file = textOrFile.StartsWith(_folder.Path, StringComparison.Ordinal)
            ? textOrFile : _folder.Write("drive.csv", textOrFile);

        var outcome = ReplayCall.Of([file], everyS: 1);

        Assert.Equal(ExitCode.BadInput, outcome.ExitCode);
        Assert.Empty(outcome.Output);
        var line = Assert.Single(outcome.ErrorLines);
        Assert.StartsWith(place.Length == 0 ? $"{file}: " : $"{file}: {place}: ", line, StringComparison.Ordinal);
        Assert.Contains(what, line, StringComparison.Ordinal);
        Assert.InRange(line.Length, 1, file.Length + 200);
    }
}
