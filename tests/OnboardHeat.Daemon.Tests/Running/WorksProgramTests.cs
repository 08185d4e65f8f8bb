using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

/// <summary>Works on the circuit as a person at the command line meets them.</summary>
[Trait("Category", "Program")]
public sealed class WorksProgramTests
{
    [Fact]
    public async Task WholeJob_IsAnsweredClearlyAtEveryStep_AndOutlivesAPowerCut()
    {
        using var van = new BusFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("control socket");
            var ended = await AskAsync(van, "works", "end");
            Assert.Equal(
                (65, true),
                (ended.ExitCode, ended.Errors.Contains("no works are under way", StringComparison.Ordinal)));
            var begun = await AskAsync(van, "works", "begin");
            Assert.Contains("the circuit is not watched, nothing is learnt", begun.Output, StringComparison.Ordinal);
            var again = await AskAsync(van, "works", "begin");
            Assert.Equal(
                (65, true), (again.ExitCode, again.Errors.Contains("under way already", StringComparison.Ordinal)));
        }

        // The process was killed: a power cut. The next one comes up in works mode and says so.
        using var next = RunningDaemon.Start(van.Configuration);
        await next.SaysAsync("works on the circuit go on");
        var stands = await AskAsync(van, "works");
        Assert.Contains("since before the computer was started", stands.Output, StringComparison.Ordinal);
        var done = await AskAsync(van, "works", "end", "--changed", "hoses", "--changed", "coolant");
        Assert.Equal(0, done.ExitCode);
        await next.SaysAsync("changed:hoses");
        await next.SaysAsync("changed:coolant");
        Assert.Contains("the circuit is watched", (await AskAsync(van, "works")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EndWithoutAnAnswer_AsksWhatWasChanged_UntilItIsSaid()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        await AskAsync(van, "works", "begin");
        var ended = await AskAsync(van, "works", "end");
        Assert.Contains("What was changed", ended.Output, StringComparison.Ordinal);
        Assert.Contains("What was changed", (await AskAsync(van, "works")).Output, StringComparison.Ordinal);
        Assert.Equal(0, (await AskAsync(van, "changed", "nothing")).ExitCode);
        Assert.DoesNotContain("What was changed", (await AskAsync(van, "works")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(64, "works", "end", "--changed", "everything")]
    [InlineData(65, "acknowledge")]
    [InlineData(65, "acknowledge", "frost")]
    [InlineData(65, "shelve", "element-dry")]
    public async Task WhatWouldDoNothing_IsRefusedWithItsReason(int code, params string[] words)
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        var outcome = await AskAsync(van, words);
        Assert.Equal(code, outcome.ExitCode);
        Assert.NotEmpty(outcome.Errors);
    }

    [Fact]
    public async Task TestAtStart_SaysInOneLineWhatIsMissing_BesideJudging()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("self-test: ");
        var line = daemon.Log.Split('\n').Single(line => line.Contains("self-test: ", StringComparison.Ordinal));
        Assert.Contains("no watchdog of the service manager", line, StringComparison.Ordinal);
        Assert.DoesNotContain("probe", line, StringComparison.Ordinal);
        Assert.DoesNotContain("record", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DrainedAndFilled_AreAnsweredWithWhatToMind()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        Assert.Contains("Element off", (await AskAsync(van, "drained")).Output, StringComparison.Ordinal);
        Assert.Contains("element", (await AskAsync(van, "filled")).Output, StringComparison.Ordinal);
    }

    private static Task<Outcome> AskAsync(BusFolder van, params string[] words) =>
        WholeProgram.RunAsync([.. words, "--config", van.Configuration]);
}
