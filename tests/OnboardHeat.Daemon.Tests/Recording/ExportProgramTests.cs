using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Recording;

[Trait("Category", "Program")]
public sealed class ExportProgramTests
{
    [Fact]
    public async Task BesideARunningDaemonAndAfterIt_TheRecordIsExportedAndReplays()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("control socket");
            Assert.Equal(0,
                (await WholeProgram.RunAsync(["note", "at the pass", "--config", van.Configuration])).ExitCode);
            var beside = await UntilItHoldsAsync(van, "note:at the pass");
            Assert.StartsWith("time,run,elapsed_s,tank_top,flow,action,house\n", beside.Output,
                StringComparison.Ordinal);
            Assert.Contains("scans of run 1 exported", beside.Errors, StringComparison.Ordinal);
            Assert.Equal(0, (await daemon.TerminateAsync()).Code);
        }

        var after = await WholeProgram.RunAsync(
            ["export", "--output", folder["export.csv"], "--config", van.Configuration]);
        Assert.Equal((0, ""), (after.ExitCode, after.Output));
        Assert.Contains("note:at the pass", await File.ReadAllTextAsync(folder["export.csv"]),
            StringComparison.Ordinal);
        Assert.Equal(0,
            (await WholeProgram.RunAsync(["replay", folder["export.csv"], "--config", van.Configuration])).ExitCode);
    }

    [Fact]
    public async Task RecordInUseAndNoDaemonThatAnswers_Exits69AndLeavesNoFile()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        var outcome = await WholeProgram.RunAsync(
            ["export", "--output", folder["export.csv"], "--config", van.Configuration],
            ("ONBOARDHEAT__Control__Socket", folder["nobody.sock"]));
        Assert.Equal(69, outcome.ExitCode);
        Assert.Contains("in use by another process", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Path));
    }

    [Theory]
    [InlineData(64, "--runs", "seven")]
    [InlineData(64, "--from", "yesterday")]
    [InlineData(65, "--runs", "1")]
    public async Task WhatCannotBeExported_IsRefused(int code, string option, string value)
    {
        using var van = new BusFolder();
        var outcome = await WholeProgram.RunAsync(["export", option, value, "--config", van.Configuration]);
        Assert.Equal((code, ""), (outcome.ExitCode, outcome.Output));
        Assert.NotEmpty(outcome.Errors);
    }

    private static async Task<Outcome> UntilItHoldsAsync(BusFolder van, string words)
    {
        Outcome outcome;
        var left = 60;
        do
        {
            outcome = await WholeProgram.RunAsync(["export", "--config", van.Configuration]);
        }
        while (!outcome.Output.Contains(words, StringComparison.Ordinal) && --left > 0);
        Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
        return outcome;
    }
}
