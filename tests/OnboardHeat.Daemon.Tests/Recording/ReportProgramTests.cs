using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Recording;

[Trait("Category", "Program")]
public sealed class ReportProgramTests
{
    private const string Note = "</script><script>alert(1)</script>";

    [Fact]
    public async Task BesideARunningDaemonAndAfterIt_TheReportIsOneFileThatHoldsTheNoteAsText()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("control socket");
            Assert.Equal(0, (await WholeProgram.RunAsync(["note", Note, "--config", van.Configuration])).ExitCode);
            var beside = await UntilItHoldsAsync(van, "&lt;/script&gt;&lt;script&gt;alert(1)");
            Assert.StartsWith("<!doctype html>", beside, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", beside, StringComparison.OrdinalIgnoreCase);
            Assert.Equal(0, (await daemon.TerminateAsync()).Code);
        }

        var after = await WholeProgram.RunAsync(
            ["report", "--share", "--output", folder["trip.html"], "--config", van.Configuration]);
        Assert.Equal((0, ""), (after.ExitCode, after.Output));
        var shared = await File.ReadAllTextAsync(folder["trip.html"]);
        Assert.Contains("Hot water on a trip</h1>", shared, StringComparison.Ordinal);
        Assert.DoesNotContain("alert(1)", shared, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(64, "--from", "yesterday")]
    [InlineData(65, "--to", "2020-01-01")]
    public async Task WhatCannotBeReported_IsRefused(int code, string option, string value)
    {
        using var van = new BusFolder();
        var outcome = await WholeProgram.RunAsync(["report", option, value, "--config", van.Configuration]);
        Assert.Equal((code, ""), (outcome.ExitCode, outcome.Output));
        Assert.NotEmpty(outcome.Errors);
    }

    private static async Task<string> UntilItHoldsAsync(BusFolder van, string words)
    {
        Outcome outcome;
        var left = 60;
        do
        {
            outcome = await WholeProgram.RunAsync(["report", "--config", van.Configuration]);
        }
        while (!outcome.Output.Contains(words, StringComparison.Ordinal) && --left > 0);
        Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
        return outcome.Output;
    }
}
