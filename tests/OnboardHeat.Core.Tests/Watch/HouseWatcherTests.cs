using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class HouseWatcherTests
{
    [Fact]
    public void SupplyDips_IsToldAfterTenSeconds()
    {
        var bench = Bench();
        bench.Run(30, _ => bench.Scan.House = HouseReport.Well with { IsPowerLow = true });
        Assert.Equal(["+power-low"], bench.Changes);
        bench.Run(70, _ => bench.Scan.House = HouseReport.Well);
        Assert.Equal(["+power-low", "-power-low"], bench.Changes);
    }

    [Fact]
    public void TrialOfTheWarningChainFails_IsCannotJudge()
    {
        var bench = Bench();
        bench.Run(120, _ => bench.Scan.House = HouseReport.Well with { SelfTestFailed = "no alarm came out" });
        Assert.Equal(["+cannot-judge/self-test"], bench.Changes);
        Assert.Equal("no alarm came out", bench.Alarm("cannot-judge/self-test")!.Because);
    }

    [Fact]
    public void ReportOfTheHouse_ReadsBackAsWritten()
    {
        var report = new HouseReport("card full", "2 blocks", true) { SelfTestFailed = "nothing came out" };
        Assert.True(HouseReport.TryParse(report.ToString(), out var read));
        Assert.Equal(report, read);
    }

    private static MonitorBench Bench() => new MonitorBench([Channel.TankTop], []).Set(Channel.TankTop, 40).Run(4);
}
