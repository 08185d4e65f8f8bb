using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class WorksOpenWatcherTests
{
    [Fact]
    public void EngineRunsAQuarterOfAnHourInWorksMode_IsTold()
    {
        var bench = Bench(engine: true).Do(ActionKind.WorksBegin).Run(880);
        Assert.Empty(bench.Changes);
        bench.Run(40);
        Assert.Equal(["+works-open"], bench.Changes);
        Assert.Contains("15 min", bench.Alarm("works-open")!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void EngineOff_IsAskedAfterFourHours()
    {
        var bench = Bench(engine: false, periodS: 30).Do(ActionKind.WorksBegin).Run(14_340);
        Assert.Empty(bench.Changes);
        bench.Run(120);
        Assert.Equal(["+works-open"], bench.Changes);
        Assert.Contains("4.0 h", bench.Alarm("works-open")!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void WorksEnd_ClearsAtOnce() =>
        Assert.Equal(
            ["+works-open", "-works-open"],
            Bench(engine: true).Do(ActionKind.WorksBegin).Run(920).Do(ActionKind.WorksEnd).Run(2).Changes);

    [Fact]
    public void BegunTwice_CountsFromTheFirst() =>
        Assert.Equal(
            ["+works-open"],
            Bench(engine: false, periodS: 30).Do(ActionKind.WorksBegin)
                .Run(7200).Do(ActionKind.WorksBegin).Run(7300).Changes);

    [Fact]
    public void EndedWithoutBegin_IsNothing()
    {
        var bench = Bench(engine: true).Do(ActionKind.WorksEnd).Run(2000);
        Assert.Empty(bench.Changes);
        Assert.False(bench.Last!.IsInWorks);
    }

    [Fact]
    public void CutInTheMiddle_WorksGoOn_AndTheirAgeWithThem()
    {
        var before = Bench(engine: false, periodS: 30).Do(ActionKind.WorksBegin).Run(14_000);
        var after = new MonitorBench([Channel.TankTop], [Signal.EngineRunning], before.Monitor.Keep()) { PeriodS = 30 };
        after.Set(Channel.TankTop, 40).Set(Signal.EngineRunning, false).Run(600);
        Assert.True(after.Last!.IsInWorks);
        Assert.Equal(["+works-open"], after.Changes);
    }

    private static MonitorBench Bench(bool engine, double periodS = 2) =>
        new MonitorBench([Channel.TankTop], [Signal.EngineRunning]) { PeriodS = periodS }
            .Set(Channel.TankTop, 40).Set(Signal.EngineRunning, engine).Run(periodS);
}
