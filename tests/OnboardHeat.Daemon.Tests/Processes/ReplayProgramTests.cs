using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Processes;

/// <summary>
/// The program as people call it. <c>tests/run</c> runs these with the ahead-of-time compiled build as well.
/// </summary>
[Trait("Category", "Program")]
public sealed class ReplayProgramTests : IDisposable
{
    private const string Drive = "time,tank_top\n2026-05-03T09:00:00Z,50.5\n2026-05-03T09:00:02Z,51.5\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Replay_PrintsOnlyObjectsAndNamesTheDefaultsOnStderr()
    {
        var outcome = await WholeProgram.RunAsync(["replay", _folder.Write("a.csv", Drive), "--status-every", "2"]);

        Assert.Equal(ExitCode.Done, outcome.ExitCode);
        Assert.Equal((2, 2), (outcome.Lines.Length, outcome.Of("status").Length));
        Assert.Contains("Tank:VolumeLitres 24 (default)", Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task OutputClosedAfterOneLine_EndsQuietlyWithZero()
    {
        // GIVEN far more output than a pipe holds (64 KiB, pipe(7))
        var rows = string.Concat(Enumerable.Range(0, 20_000).Select(i => $"{i},50\n"));
        var file = _folder.Write("long.csv", "elapsed_s,tank_top\n" + rows);

        var outcome = await WholeProgram.RunForOneLineAsync(
            ["replay", file, "--status-every", "1", "--config", _folder.Write("van.json", "{}")]);

        Assert.Equal((ExitCode.Done, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("\"kind\":\"status\"", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task GermanLocale_ChangesNothing()
    {
        string[] call = ["replay", _folder.Write("a.csv", Drive), "--status-every", "0.5"];

        var plain = await WholeProgram.RunAsync(call, ("LC_ALL", "C"));
        var german = await WholeProgram.RunAsync(call, ("LANG", "de_DE.UTF-8"), ("LC_ALL", "de_DE.UTF-8"));

        Assert.Equal(plain, german);
        Assert.Equal(2, german.Lines.Length);
    }

    [Fact]
    public async Task PipeInsteadOfAFile_IsRead()
    {
        var outcome = await WholeProgram.RunAsync(
            Drive, ["replay", "/dev/stdin", "--status-every", "2", "--config", _folder.Write("van.json", "{}")]);

        Assert.Equal((ExitCode.Done, "", 2), (outcome.ExitCode, outcome.Errors, outcome.Of("status").Length));
    }

    [Fact]
    public async Task BadInput_IsOneLineAndSixtyFive()
    {
        var file = _folder.Write("a.csv", "time,tank_top\n2026-05-03T09:00:00Z,hot\n");

        var outcome = await WholeProgram.RunAsync(["replay", file, "--config", _folder.Write("van.json", "{}")]);

        Assert.Equal((ExitCode.BadInput, ""), (outcome.ExitCode, outcome.Output));
        Assert.StartsWith(
            $"{file}: line 2, column tank_top: 'hot'", Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task BadConfiguration_IsToldWholeAndSeventyEight()
    {
        var config = _folder.Write("van.json", "{\"Tank\":{\"VolumeLitrs\":24,\"ReliefCelsius\":\"hot\"}}");

        var outcome = await WholeProgram.RunAsync(
            ["replay", _folder.Write("a.csv", Drive), "--config", config], ("ONBOARDHEAT__Shower__MixedCelsius", "99"));

        Assert.Equal((ExitCode.BadConfiguration, "", 3), (outcome.ExitCode, outcome.Output, outcome.ErrorLines.Length));
    }

    [Theory]
    [InlineData]
    [InlineData("replay")]
    [InlineData("dance")]
    [InlineData("replay", "a.csv", "--status-every", "soon")]
    [InlineData("replay", "a.csv", "--status-every", "-1")]
    [InlineData("replay", "a.csv", "--status-every", "NaN")]
    [InlineData("replay", "a.csv", "--status-every", "1,5")]
    [InlineData("replay", "a.csv", "--wish")]
    public async Task CommandLineThatCannotBeUnderstood_IsSixtyFour(params string[] arguments)
    {
        var outcome = await WholeProgram.RunAsync(arguments);

        Assert.Equal((ExitCode.Usage, ""), (outcome.ExitCode, outcome.Output));
        Assert.Contains("--help", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HelpAndVersion_AreOutput()
    {
        var help = await WholeProgram.RunAsync(["--help"]);
        var version = await WholeProgram.RunAsync(["--version"]);

        Assert.Contains(
            "onboardheat replay", (await WholeProgram.RunAsync(["replay", "--help"])).Output, StringComparison.Ordinal);
        Assert.Contains("replay <FILE>", help.Output, StringComparison.Ordinal);
        Assert.Matches(@"^\d+\.\d+\.\d+$", version.Output.Trim());
        Assert.Equal((ExitCode.Done, ExitCode.Done), (help.ExitCode, version.ExitCode));
    }
}
