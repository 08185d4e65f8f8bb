using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class CannotJudgeWatcherTests
{
    private const string Alarm = "cannot-judge/tank-over-temperature";

    [Fact]
    public void TankProbesGone_SaysThatTheTankIsNotJudged()
    {
        var bench = new MonitorBench([Channel.TankTop, Channel.Surroundings], []);
        bench.Set(Channel.TankTop, 50).Set(Channel.Surroundings, 12).Run(60);
        Assert.True(CanJudgeTank(bench));
        bench.Set(Channel.TankTop, null).Run(120);
        Assert.Contains("+" + Alarm, bench.Changes);
        Assert.Contains("tank_top", bench.Alarm(Alarm)!.Because, StringComparison.Ordinal);
        Assert.False(CanJudgeTank(bench));
    }

    [Fact]
    public void TankProbeBack_ClearsIt()
    {
        var bench = new MonitorBench([Channel.TankTop], []);
        bench.Set(Channel.TankTop, 50).Run(60).Set(Channel.TankTop, null).Run(120).Set(Channel.TankTop, 50).Run(120);
        Assert.Contains("-" + Alarm, bench.Changes);
        Assert.Null(bench.Alarm(Alarm)?.IsPresent == true ? Alarm : null);
    }

    [Fact]
    public void NeverFitted_IsListedAndNotAlarmed()
    {
        var bench = new MonitorBench([Channel.Surroundings], []);
        bench.Set(Channel.Surroundings, 12).Run(600);
        Assert.DoesNotContain("+" + Alarm, bench.Changes);
        Assert.Null(bench.Last!.Watching.Single(status => status.Watcher == "tank-over-temperature").CanJudge);
    }

    [Fact]
    public void OneOfTwoTankProbesGone_StillJudges()
    {
        var bench = new MonitorBench([Channel.TankTop, Channel.TankBottom], []);
        bench.Set(Channel.TankTop, 50).Set(Channel.TankBottom, 49).Run(60).Set(Channel.TankBottom, null).Run(300);
        Assert.DoesNotContain("+" + Alarm, bench.Changes);
    }

    [Fact]
    public void TrayProbeGoneForFiveMinutes_IsTheProbesOwnAlarmOnly_AndForElevenMinutesMore()
    {
        var bench = new MonitorBench([Channel.TankTop, Channel.Tray], []);
        bench.Set(Channel.TankTop, 50).Set(Channel.Tray, 12).Run(60).Set(Channel.Tray, null).Run(300);
        Assert.DoesNotContain("+cannot-judge/water-in-tray", bench.Changes);
        bench.Run(360);
        Assert.Contains("+cannot-judge/water-in-tray", bench.Changes);
    }

    private static bool? CanJudgeTank(MonitorBench bench) =>
        bench.Last!.Watching.Single(status => status.Watcher == "tank-over-temperature").CanJudge;
}
