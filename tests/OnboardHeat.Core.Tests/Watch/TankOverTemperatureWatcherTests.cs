using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>
/// Contracts: a tank probe within 2 K of the relief temperature (90 °C by default) for 30 s; off 5 K below; latched.
/// </summary>
public sealed class TankOverTemperatureWatcherTests
{
    private const string Alarm = "tank-over-temperature";

    [Fact]
    public void WithinTwoKelvinForThirtySeconds_IsRaised()
    {
        var bench = Bench().Set(Channel.TankTop, 88).Run(28);
        Assert.DoesNotContain("+" + Alarm, bench.Changes);
        bench.Run(6);
        Assert.Contains("+" + Alarm, bench.Changes);
        Assert.Equal("tank at 88.0 °C, relief valve opens at 90.0 °C", bench.Alarm(Alarm)!.Because);
    }

    [Fact]
    public void ASixteenthBelow_IsNotRaised() =>
        Assert.DoesNotContain("+" + Alarm, Bench().Set(Channel.TankTop, 87.9375).Run(600).Changes);

    [Fact]
    public void Cooling_ClearsOnlyFiveKelvinBelow_AndStaysLatchedUntilAcknowledged()
    {
        var bench = Bench().Set(Channel.TankTop, 89).Run(60)
            .Set(Channel.TankTop, 84).Set(Channel.TankBottom, 82).Run(300);
        Assert.DoesNotContain("-" + Alarm, bench.Changes);
        bench.Set(Channel.TankTop, 82.5).Run(300);
        Assert.Contains("-" + Alarm, bench.Changes);
        Assert.Equal(Core.Watch.AlarmState.Latched, bench.Alarm(Alarm)!.State);
        bench.Do(ActionKind.Acknowledge, Alarm).Run(2);
        Assert.Null(bench.Alarm(Alarm));
    }

    [Fact]
    public void AnyTankProbe_CanRaiseIt() =>
        Assert.Contains("+" + Alarm, Bench().Set(Channel.TankBottom, 88.5).Run(60).Changes);

    [Fact]
    public void ProbeLostWhileRaised_DoesNotClearIt()
    {
        var bench = Bench().Set(Channel.TankTop, 89).Set(Channel.TankBottom, 89).Run(60)
            .Set(Channel.TankTop, null).Set(Channel.TankBottom, null).Run(600);
        Assert.DoesNotContain("-" + Alarm, bench.Changes);
    }

    private static MonitorBench Bench() => new MonitorBench([Channel.TankTop, Channel.TankBottom], [])
        .Set(Channel.TankTop, 86).Set(Channel.TankBottom, 86).Run(60);
}
