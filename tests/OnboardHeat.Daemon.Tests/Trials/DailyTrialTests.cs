using Microsoft.Extensions.Logging.Abstractions;
using OnboardHeat.Core;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Daemon.Trials;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Trials;

public sealed class DailyTrialTests
{
    private static readonly string[] s_full = ["tank_top", "tank_bottom", "flow", "return", "surroundings", "tray"];

    [Theory]
    [InlineData("tank_top tank_middle tank_bottom flow return surroundings tray outlet cold_supply engine_coolant", 2)]
    [InlineData("tank_top tank_bottom flow return surroundings tray", 2)]
    [InlineData("tank_top tank_bottom flow return", 1)]
    [InlineData("tank_top", 1)]
    [InlineData("tank_bottom tray", 1)]
    public async Task SoundChain_LetsEveryStagedFailureOut(string channels, int stories)
    {
        var van = Van(channels.Split(' '));
        Assert.Equal(stories, StagedFailure.For(van.Description).Count);
        await new DailyTrial(van, TimeProvider.System, NullLogger.Instance).TryAsync(CancellationToken.None);
        Assert.Equal("", van.House.Current.SelfTestFailed);
    }

    [Fact]
    public async Task ChainThatLosesAlarms_IsReported_AndClearedByTheNextSoundTrial()
    {
        var van = Van(s_full);
        var broken = new DailyTrial(van, TimeProvider.System, NullLogger.Instance)
        {
            InTheChain = static picture => picture with { Alarms = [] },
        };
        await broken.TryAsync(CancellationToken.None);
        Assert.Contains(
            "tank-over-temperature did not come out", van.House.Current.SelfTestFailed, StringComparison.Ordinal);
        await new DailyTrial(van, TimeProvider.System, NullLogger.Instance).TryAsync(CancellationToken.None);
        Assert.Equal("", van.House.Current.SelfTestFailed);
    }

    [Fact]
    public async Task ChainThatThrows_IsReportedWithItsWords()
    {
        var van = Van(s_full);
        var broken = new DailyTrial(van, TimeProvider.System, NullLogger.Instance)
        {
            InTheChain = static _ => throw new InvalidOperationException("a bug"),
        };
        await broken.TryAsync(CancellationToken.None);
        Assert.Contains("a bug", van.House.Current.SelfTestFailed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Trial_LeavesTheRealPictureAlone()
    {
        var van = Van(s_full);
        var real = van.Feed.Subscribe("real", 8);
        await new DailyTrial(van, TimeProvider.System, NullLogger.Instance).TryAsync(CancellationToken.None);
        Assert.False(real.Reader.TryRead(out _));
        Assert.Null(van.Latest.Newest);
    }

    private static RunningVan Van(IEnumerable<string> channels) => new(new OnboardHeatOptions
    {
        Probes = [.. channels.Select((channel, i) => new ProbeOptions { Channel = channel, Rom = $"28-{i:x12}" })],
        Signals = [new SignalOptions { Signal = "engine_running", Pin = 17 }],
    });
}
