using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>Contracts: wet or warm tray that is not coolant.</summary>
public sealed class WaterInTrayWatcherTests
{
    private const string Alarm = "+water-in-tray";

    [Fact]
    public void WetContactWhileParked_IsWaterAfterTwoMinutes_AndNoLoss()
    {
        var bench = new MonitorBench([Channel.TankTop], [Signal.TrayWet])
            .Set(Channel.TankTop, 50).Set(Signal.TrayWet, true).Run(110);
        Assert.DoesNotContain(Alarm, bench.Changes);
        bench.Run(20);
        Assert.Contains(Alarm, bench.Changes);
        Assert.DoesNotContain("+coolant-loss", bench.Changes);
    }

    [Fact]
    public void DryTray_IsSilent()
    {
        var bench = new MonitorBench([Channel.TankTop], [Signal.TrayWet])
            .Set(Channel.TankTop, 50).Set(Signal.TrayWet, false).Run(600);
        Assert.DoesNotContain(Alarm, bench.Changes);
    }
}
