using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Failures;

/// <summary>Every probe and contact of the failure table (hardware-notes/failures.md), broken one by one.</summary>
public sealed class ProbeFailureTests
{
    [Theory]
    [InlineData("tank_top")]
    [InlineData("tank_middle")]
    [InlineData("tank_bottom")]
    [InlineData("flow")]
    [InlineData("return")]
    [InlineData("surroundings")]
    [InlineData("tray")]
    [InlineData("outlet")]
    [InlineData("cold_supply")]
    [InlineData("engine_coolant")]
    public void ProbeGone_IsToldWithinAMinuteAndAQuarter_AndNothingElse(string name)
    {
        Assert.True(Channels.TryParse(name, out var channel));
        var bench = Warm().Set(channel, null).Run(75);
        Assert.Equal([$"+probe-fault/{name}"], bench.Changes);
    }

    [Fact]
    public void BothTankProbesGone_OverTemperatureSaysThatItCannotJudge()
    {
        var bench = Warm();
        foreach (var channel in Channels.OfTank)
        {
            bench.Set(channel, null);
        }

        bench.Run(150);
        Assert.Contains("+cannot-judge/tank-over-temperature", bench.Changes);
    }

    [Fact]
    public void BothLineProbesGone_LossOfCoolantSaysThatItCannotJudge()
    {
        var bench = Warm().Set(Channel.Flow, null).Set(Channel.Return, null).Set(Channel.EngineCoolant, null).Run(150);
        Assert.Contains("+cannot-judge/coolant-loss", bench.Changes);
        Assert.DoesNotContain("+coolant-loss", bench.Changes);
    }

    [Fact]
    public void EngineContactUnreadable_IsWorkedOutFromTheLines_AndNoAlarm()
    {
        var bench = Warm().Set(Signal.EngineRunning, null).Run(300);
        Assert.Empty(bench.Changes);
        Assert.True(bench.Last!.Circuit.IsEngineInferred);
    }

    [Fact]
    public void ElementContactUnreadable_SaysThatElementDryCannotBeJudged()
    {
        var bench = Warm().Set(Signal.ElementOn, null).Run(150);
        Assert.Equal(["+cannot-judge/element-dry"], bench.Changes);
    }

    private static MonitorBench Warm()
    {
        var bench = new MonitorBench(Channels.All.ToArray(), [Signal.EngineRunning, Signal.ElementOn]);
        foreach (var channel in Channels.All)
        {
            bench.Set(channel, channel switch
            {
                Channel.TankTop or Channel.TankMiddle or Channel.TankBottom => 36,
                Channel.Flow or Channel.Return or Channel.EngineCoolant => 20,
                _ => 14,
            });
        }

        return bench.Set(Signal.EngineRunning, false).Set(Signal.ElementOn, false).Run(200);
    }
}
