using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Demonstrating;

[Trait("Category", "Program")]
public sealed class DemoProgramTests
{
    [Fact]
    public async Task DemoAtFullSpeed_SaysWhatReallyHappenedAndWhatWasTold()
    {
        var outcome = await WholeProgram.RunAsync(["demo", "--speed", "max"]);

        // The hose comes off at a known moment of the plan, 8:40:00 + 3 h 250 s; whether it was told is the monitor's
        // to earn.
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("11:44:10 The flow hose came off at the tank.", outcome.Output, StringComparison.Ordinal);
        Assert.Matches("coolant-loss told .* after|coolant-loss was NOT told", outcome.Output);
        Assert.DoesNotContain('\x1b', outcome.Output);
    }

    [Fact]
    public async Task SameSeed_TellsTheSameDayAndAnotherSeedAnother()
    {
        var days = await Task.WhenAll(
            WholeProgram.RunAsync(["demo", "--speed", "max", "--seed", "5"]),
            WholeProgram.RunAsync(["demo", "--speed", "max", "--seed", "5"]),
            WholeProgram.RunAsync(["demo", "--speed", "max", "--seed", "6"]));
        Assert.Equal(days[0].Output, days[1].Output);
        Assert.NotEqual(days[0].Output, days[2].Output);
    }

    [Fact]
    public async Task ReaderThatLeaves_EndsItQuietly()
    {
        var outcome = await WholeProgram.RunForOneLineAsync(["demo", "--speed", "max"]);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.StartsWith("08:40:00", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--speed", "fast")]
    [InlineData("--speed", "0")]
    [InlineData("--speed", "NaN")]
    [InlineData("--seed", "x")]
    public async Task BadOption_IsAUsageError(string option, string value)
    {
        var outcome = await WholeProgram.RunAsync(["demo", option, value]);
        Assert.Equal(64, outcome.ExitCode);
        Assert.Contains(value, outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Interrupted_EndsCleanlyAndSaysHowFarItCame()
    {
        var outcome = await WholeProgram.RunUntilInterruptedAsync(["demo", "--speed", "100"]);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("Ended early, at 08:", outcome.Output, StringComparison.Ordinal);
    }
}
