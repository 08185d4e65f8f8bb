using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>Contracts: flow or engine_coolant above Circuit:CoolantMaxCelsius (110 by default) for 30 s.</summary>
public sealed class CoolantOverTemperatureWatcherTests
{
    private const string Alarm = "coolant-over-temperature";

    [Fact]
    public void AboveTheLimitForThirtySeconds_IsRaised_AndClearsThreeKelvinBelow()
    {
        var bench = new MonitorBench([Channel.EngineCoolant], []).Set(Channel.EngineCoolant, 109).Run(60);
        Assert.DoesNotContain("+" + Alarm, bench.Changes);
        bench.Set(Channel.EngineCoolant, 111).Run(36);
        Assert.Contains("+" + Alarm, bench.Changes);
        bench.Set(Channel.EngineCoolant, 108).Run(120);
        Assert.DoesNotContain("-" + Alarm, bench.Changes);
        bench.Set(Channel.EngineCoolant, 106).Run(60);
        Assert.Contains("-" + Alarm, bench.Changes);
    }
}
