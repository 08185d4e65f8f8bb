using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Issues;

/// <summary>
/// A loss of coolant that was latched when works began was out of service, and so was not kept: after a power cut
/// nobody asked for the acknowledgement and the repair any more.
/// </summary>
public sealed class LossLatchedDuringWorksTests
{
    [Fact]
    public void PowerCutDuringWorks_LossStaysLatchedAfterThem()
    {
        var kept = KeptState.Fresh with
        {
            Alarms =
                [new("coolant-loss", "", Core.Watch.AlarmState.Latched, false, false, true, 600, 0, "tray rose 20 K")],
            IsInWorks = true,
        };
        var during = Bench(kept).Run(60);
        var after = Bench(during.Monitor.Keep()).Run(10).Do(ActionKind.WorksEnd).Run(10);
        Assert.Equal(Core.Watch.AlarmState.Latched, after.Alarm("coolant-loss")!.State);
        Assert.Null(after.Do(ActionKind.Repaired).Run(2).Alarm("coolant-loss"));
    }

    private static MonitorBench Bench(KeptState kept) =>
        new MonitorBench([Channel.TankTop, Channel.Tray], [], kept).Set(Channel.TankTop, 40).Set(Channel.Tray, 12);
}
