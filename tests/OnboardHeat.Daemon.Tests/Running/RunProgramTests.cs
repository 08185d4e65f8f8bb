using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

[Trait("Category", "Program")]
public sealed class RunProgramTests
{
    [Fact]
    public async Task Start_SaysVersionConfigurationProbesAndDestinationFirst()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("publishes to");
        var first = daemon.Log.Split('\n')[0];
        var said =
            $"OnboardHeat 0.1.0, configuration {van.Configuration}, run 1; 2 of 2 probes found; publishes to no broker";
        Assert.Contains(said, first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Terminated_EndsWithinSixSecondsWith0_AndTheNextRunCountsOn()
    {
        using var van = new BusFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("page at");
            var (code, took) = await daemon.TerminateAsync();
            Assert.Equal(0, code);
            Assert.True(took < TimeSpan.FromSeconds(6), $"took {took}");
        }

        using var next = RunningDaemon.Start(van.Configuration);
        await next.SaysAsync("run 2;");
    }

    [Fact]
    public async Task SecondDaemon_EndsAtOnceAndTheFirstGoesOn()
    {
        using var van = new BusFolder();
        using var first = RunningDaemon.Start(van.Configuration);
        await first.SaysAsync("control socket");
        using var second = RunningDaemon.Start(van.Configuration);
        Assert.Equal(70, await second.EndAsync());
        Assert.Contains("another daemon already judges this van", second.Log, StringComparison.Ordinal);
        Assert.Equal(0, (await WholeProgram.RunAsync(["note", "still here", "--config", van.Configuration])).ExitCode);
    }

    [Fact]
    public async Task ProbeUnpluggedAndBack_IsToldBothTimes()
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("publishes to");
        van.Unplug(BusFolder.Flow);
        await daemon.SaysAsync("no probe at flow: Missing");
        Assert.DoesNotContain("tank_top: Missing", daemon.Log, StringComparison.Ordinal);
        van.Plug(BusFolder.Flow);
        await daemon.SaysAsync("flow reads again");
    }

    [Fact]
    public async Task ProbeThatHangs_IsMissingAndHoldsUpNeitherJudgingNorStopping()
    {
        using var van = new BusFolder();
        await van.HangAsync(BusFolder.Flow);
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("no probe at flow: Missing");
        Assert.Equal(0, (await WholeProgram.RunAsync(["drained", "--config", van.Configuration])).ExitCode);
        var (code, took) = await daemon.TerminateAsync();
        Assert.Equal(0, code);
        Assert.True(took < TimeSpan.FromSeconds(6), $"took {took}");
    }

    [Fact]
    public async Task BusThatAppearsLater_IsReadWithoutARestart()
    {
        using var van = new BusFolder(hasBus: false);
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("0 of 2 probes found, missing tank_top");
        await daemon.SaysAsync("no probe at tank_top: Missing");
        van.Plug(BusFolder.Top);
        await daemon.SaysAsync("tank_top reads again");
        Assert.Equal(0, (await daemon.TerminateAsync()).Code);
    }

    [Fact]
    public async Task StateFolderThatCannotBeWritten_IsToldAndJudgingGoesOn()
    {
        using var van = new BusFolder();
        await File.WriteAllTextAsync(van.State, "a file where the folder should be");
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("what was learnt cannot be kept, alarms go on");
        Assert.Equal(
            0, (await WholeProgram.RunAsync(["note", "still judging", "--config", van.Configuration])).ExitCode);
    }

    [Theory]
    [InlineData("BuzzerPin", "buzzer")]
    [InlineData("ButtonPin", "button")]
    [InlineData("HeartbeatPin", "heartbeat")]
    public async Task OutputWithoutAChip_IsToldAfterTheFirstLineAndJudgingGoesOn(string option, string output)
    {
        // A machine that runs tests has no GPIO chip with libgpiod; a Pi under test would say that it works instead.
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration, ($"ONBOARDHEAT__Outputs__{option}", "22"));
        await daemon.SaysAsync($"{output}: no GPIO lines to be had");
        Assert.Contains("OnboardHeat 0.1.0", daemon.Log.Split('\n')[0], StringComparison.Ordinal);
        Assert.Equal(
            0, (await WholeProgram.RunAsync(["note", "still judging", "--config", van.Configuration])).ExitCode);
    }

    [Fact]
    public async Task ActionWithoutADaemon_Exits69()
    {
        using var van = new BusFolder();
        Assert.Equal(69, (await WholeProgram.RunAsync(["repaired", "--config", van.Configuration])).ExitCode);
    }

    [Theory]
    [InlineData("shelve", "coolant-loss")]
    [InlineData("acknowledge", "no-such-alarm")]
    [InlineData("changed", "everything")]
    public async Task ActionThatCannotBe_IsRefusedWith65(string action, string target)
    {
        using var van = new BusFolder();
        using var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        var refused = await WholeProgram.RunAsync([action, target, "--config", van.Configuration]);
        Assert.Equal(65, refused.ExitCode);
        Assert.NotEmpty(refused.Errors);
    }

    [Fact]
    public async Task NoProbeConfigured_Exits78()
    {
        using var folder = new TemporaryFolder();
        var outcome = await WholeProgram.RunAsync(["run", "--config", folder.Write("van.json", "{}")]);
        Assert.Equal(78, outcome.ExitCode);
    }
}
