using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

[Trait("Category", "Program")]
public sealed class ProbesProgramTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Probes_ListsTheBusWithAndWithoutADaemon(bool hasDaemon)
    {
        using var van = new BusFolder();
        using var daemon = hasDaemon ? await StartedAsync(van) : null;
        van.Plug("28-00000000000c");
        var outcome = await WholeProgram.RunAsync(["probes", "--config", van.Configuration]);
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains(
            hasDaemon ? "read by the running daemon" : "no daemon runs", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("28-00000000000a     23.13 °C  tank_top", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("28-00000000000c     23.13 °C  not configured", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Check_TellsConfigurationProbesAndWhatCannotBeJudged(bool hasDaemon)
    {
        using var van = new BusFolder();
        using var daemon = hasDaemon ? await StartedAsync(van) : null;
        var outcome = await WholeProgram.RunAsync(["check", "--config", van.Configuration]);
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains(
            hasDaemon ? "the running daemon, run 1" : "no daemon answers", outcome.Output, StringComparison.Ordinal);
        Assert.Matches(@"Tank:VolumeLitres +24 litres +.*van\.json:2", outcome.Output);
        Assert.Contains("coolant-loss: needs return or surroundings or tray", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("[ ] the tank rises", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Probes_WorksBeforeThereIsAConfiguration()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        var outcome = await WholeProgram.RunAsync(
            ["probes", "--config", folder.Write("empty.json", "{ \"Tank\": { \"VolumeLitres\": \"much\" } }")],
            ("ONBOARDHEAT__OneWire__Bus", van.Bus));
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains("28-00000000000a     23.13 °C  not configured", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("Tank:VolumeLitres", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PairCheck_IsInForceAtOnceKeptOverARestartAndDroppedWithTheProbe()
    {
        // GIVEN two probes in one glass, 0.5 K apart, beside a running daemon
        using var van = new BusFolder();
        van.Plug(BusFolder.Flow, "7a 01 4b 46 7f ff 06 10 0b : crc=0b YES\n7a 01 4b 46 7f ff 06 10 0b t=23625\n");
        using (var daemon = await StartedAsync(van))
        {
            // WHEN they are compared THEN the second learns the difference, and the daemon reads it so from then on.
            var outcome = await WholeProgram.RunAsync(
                ["probes", "--pair", "tank_top", "flow", "--config", van.Configuration]);
            Assert.Equal(0, outcome.ExitCode);
            Assert.Contains("flow reads 0.500 K above tank_top", outcome.Output, StringComparison.Ordinal);
            await daemon.SaysAsync("note:pair check: flow -0.500 K");
            Assert.Contains(
                "23.13 °C  flow            -0.50 K by pair check", await ListAsync(van), StringComparison.Ordinal);
            await daemon.TerminateAsync();
        }

        // AND it is there after a restart, and gone when another probe sits on the channel, which is a change mark by
        // itself.
        using (var daemon = await StartedAsync(van))
        {
            Assert.Contains("-0.50 K by pair check", await ListAsync(van), StringComparison.Ordinal);
            await daemon.TerminateAsync();
        }

        van.Plug("28-00000000000c");
        await File.WriteAllTextAsync(
            van.Configuration, (
                await File.ReadAllTextAsync(van.Configuration)).Replace(
                    BusFolder.Flow, "28-00000000000c", StringComparison.Ordinal));
        using (var daemon = await StartedAsync(van))
        {
            await daemon.SaysAsync($"changed:probe/flow:28-00000000000c in place of {BusFolder.Flow}");
            Assert.DoesNotContain("by pair check", await ListAsync(van), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("probes", "--pair", "flow")]
    [InlineData("probes", "--pair", "flow", "flow")]
    [InlineData("probes", "--pair", "flow", "boiler")]
    [InlineData("probes", "--warm", "--pair", "flow", "return")]
    public async Task WrongUse_Exits64(params string[] arguments) =>
        Assert.Equal(64, (await WholeProgram.RunAsync(arguments)).ExitCode);

    [Fact]
    public async Task CheckOfABadConfiguration_ListsItsProblemsAndExits78()
    {
        using var folder = new TemporaryFolder();
        var outcome = await WholeProgram.RunAsync(
            ["check", "--config", folder.Write("van.json", "{ \"Tank\": { \"VolumeLiters\": 24 } }")]);
        Assert.Equal(78, outcome.ExitCode);
        Assert.Contains("VolumeLiters", outcome.Errors, StringComparison.Ordinal);
    }

    private static async Task<RunningDaemon> StartedAsync(BusFolder van)
    {
        var daemon = RunningDaemon.Start(van.Configuration);
        await daemon.SaysAsync("control socket");
        return daemon;
    }

    private static async Task<string> ListAsync(BusFolder van) =>
        (await WholeProgram.RunAsync(["probes", "--config", van.Configuration])).Output;
}
