using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Circuit;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>Contracts: a slow loss, drips in the tray at coolant temperature or a slow fall of level.</summary>
public sealed class CoolantWeepWatcherTests
{
    private const string Weep = "+coolant-weep";

    [Fact]
    public void TrayThatLeavesTheAirByTwoKelvinAndStays_IsToldWithinFiveMinutes_AndIsNoLoss()
    {
        var van = new CircuitBench().WarmedUp();
        van.DripK = 2;
        van.Run(300);
        Assert.Contains(Weep, van.Changes);
        Assert.DoesNotContain("+coolant-loss", van.Changes);
        Assert.StartsWith("tray 1.", van.Bench.Alarm("coolant-weep")!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void TrayAndAirWarmedAlikeByTheSun_IsNothing()
    {
        var van = new CircuitBench().WarmedUp();
        (van.DripK, van.SunK) = (3, 3);
        van.Run(900);
        Assert.DoesNotContain(Weep, van.Changes);
    }

    [Fact]
    public void WarmTrayBesideLukewarmCoolant_IsNothing()
    {
        var van = new CircuitBench { EngineCelsius = 36 }.WarmedUp();
        van.DripK = 2;
        van.Run(600);
        Assert.DoesNotContain(Weep, van.Changes);
    }

    [Fact]
    public void LevelThatStaysLow_IsToldAfterTwoMinutes_AndNotInABend()
    {
        var bench = new MonitorBench([Channel.TankTop, Channel.Flow], [Signal.EngineRunning, Signal.CoolantLow])
            .Set(Channel.TankTop, 40).Set(Channel.Flow, 80)
            .Set(Signal.EngineRunning, true).Set(Signal.CoolantLow, true).Run(60);
        bench.Set(Signal.CoolantLow, false).Run(10);
        bench.Set(Signal.CoolantLow, true).Run(110);
        Assert.DoesNotContain(Weep, bench.Changes);
        bench.Run(20);
        Assert.Contains(Weep, bench.Changes);
    }
}
