using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class ElementDryWatcherTests
{
    [Fact]
    public void DrainedWithTheElementOn_IsTold_UntilItIsOffOrFilled()
    {
        var bench = Bench().Set(Signal.ElementOn, true).Do(ActionKind.Drained).Run(6);
        Assert.Contains("+element-dry", bench.Changes);
        Assert.True(bench.Last!.Tank.IsDrained);
        bench.Do(ActionKind.Filled).Run(20);
        Assert.Contains("-element-dry", bench.Changes);
    }

    [Fact]
    public void ElementSwitchedOnAfterDraining_IsTold_AlsoAfterARestart()
    {
        var before = Bench().Set(Signal.ElementOn, false).Do(ActionKind.Drained).Run(6);
        Assert.Empty(before.Changes);
        var after = new MonitorBench([Channel.TankTop], [Signal.ElementOn], before.Monitor.Keep());
        after.Set(Channel.TankTop, 12).Set(Signal.ElementOn, true).Run(6);
        Assert.Contains("+element-dry", after.Changes);
    }

    private static MonitorBench Bench() =>
        new MonitorBench([Channel.TankTop], [Signal.ElementOn]).Set(Channel.TankTop, 40).Run(4);
}
