using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class ProbeFaultWatcherTests
{
    private static readonly Channel[] s_all =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray];

    [Fact]
    public void OneBadReading_IsNobodysBusiness()
    {
        var bench = Quiet();
        for (var i = 0; i < 20; i++)
        {
            bench.Set(Channel.Flow, 85).Run(2).Set(Channel.Flow, null).Run(4).Set(Channel.Flow, 15).Run(60);
        }

        Assert.DoesNotContain("+probe-fault/flow", bench.Changes);
    }

    [Fact]
    public void BusGoneForThreeSecondsWhileCranking_IsNotTold()
    {
        var bench = Quiet(periodS: 1);
        SetAll(bench, null);
        bench.Run(3);
        SetAll(bench, 85);
        bench.Run(2);
        Warm(bench);
        bench.Run(600);
        Assert.Empty(bench.Changes);
    }

    [Fact]
    public void ProbeGoneForAMinute_IsTold_AndClearedAfterItIsBack()
    {
        var bench = Quiet();
        bench.Set(Channel.Tray, null).Run(70);
        Assert.Equal(["+probe-fault/tray"], bench.Changes);
        Assert.Equal("tray gives no reading; last believed 12.0 °C 62 s ago", bench.Alarm("probe-fault/tray")!.Because);
        Assert.NotEmpty(bench.Alarm("probe-fault/tray")!.WhatToDo);
        bench.Set(Channel.Tray, 12).Run(150);
        Assert.Equal("-probe-fault/tray", bench.Changes[^1]);
    }

    [Fact]
    public void WholeBusGone_IsOneAlarmWithoutASubject()
    {
        var bench = Quiet();
        SetAll(bench, null);
        bench.Run(600);
        Assert.Equal(
            ["+probe-fault"], bench.Changes.Where(change => change.Contains("probe-fault", StringComparison.Ordinal)));
        Assert.Contains("none of the 6 probes", bench.Alarm("probe-fault")!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void ProbeThatStaysGoneAfterTheBusIsBack_GetsItsOwnAlarm()
    {
        var bench = Quiet();
        SetAll(bench, null);
        bench.Run(100);
        Warm(bench);
        bench.Set(Channel.Flow, null).Run(300);
        Assert.Equal(
            ["+probe-fault", "+probe-fault/flow", "-probe-fault"],
            bench.Changes.Where(change => change.Contains("probe-fault", StringComparison.Ordinal)));
    }

    [Fact]
    public void ContactThatComesAndGoes_DoesNotChatter()
    {
        var bench = Quiet();
        for (var i = 0; i < 20; i++)
        {
            bench.Set(Channel.Return, null).Run(80).Set(Channel.Return, 14).Run(60);
        }

        Assert.Equal(["+probe-fault/return"], bench.Changes);
    }

    // Contracts: losing a probe is its own alarm and never a coolant-loss alarm.
    [Theory]
    [InlineData(Channel.Flow)]
    [InlineData(Channel.Return)]
    [InlineData(Channel.Tray)]
    public void EveryKindOfProbeLoss_IsNoLossOfCoolant(Channel channel)
    {
        var bench = Quiet();
        foreach (var celsius in (double?[])[null, 85, 0, -0.0625, 110])
        {
            bench.Set(channel, celsius).Run(120);
        }

        Assert.DoesNotContain("+coolant-loss", bench.Changes);
        Assert.Contains("+probe-fault/" + Channels.NameOf(channel), bench.Changes);
    }

    private static MonitorBench Quiet(double periodS = 2)
    {
        var bench = new MonitorBench(s_all, []) { PeriodS = periodS };
        Warm(bench);
        return bench.Run(300);
    }

    private static void Warm(MonitorBench bench) => bench
        .Set(Channel.TankTop, 45).Set(Channel.TankBottom, 44).Set(Channel.Flow, 15).Set(Channel.Return, 14)
        .Set(Channel.Surroundings, 12).Set(Channel.Tray, 12);

    private static void SetAll(MonitorBench bench, double? celsius)
    {
        foreach (var channel in s_all)
        {
            bench.Set(channel, celsius);
        }
    }
}
