using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class TankAdviceTests
{
    private static readonly Channel[] s_channels =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings];

    [Fact]
    public void WaterAt60C_RaisesScaldRisk_AndCoolerThan46C_ClearsIt()
    {
        var bench = Standing(60).Run(600);
        Assert.Contains("+scald-risk", bench.Changes);
        Temper(bench, 44).Run(1800);
        Assert.Contains("-scald-risk", bench.Changes);
    }

    [Fact]
    public void WaterAt40C_RaisesNoScaldRisk() =>
        Assert.DoesNotContain("+scald-risk", Standing(40).Run(600).Changes);

    [Fact]
    public void ThreeDaysInTheGrowthRange_RaiseHygieneDue_TwoDoNot()
    {
        var bench = Standing(35, 60).Run(2 * 86400);
        Assert.DoesNotContain("+hygiene-due", bench.Changes);
        bench.Run(1.1 * 86400);
        Assert.Contains("+hygiene-due", bench.Changes);
    }

    [Fact]
    public void TankNearFreezing_RaisesFrost() => Assert.Contains("+frost", Standing(1.5).Run(600).Changes);

    [Fact]
    public void WarmTankStandingWell_IsNoReasonToCloseValves()
    {
        var bench = Standing(65, 10);
        bench.Run(3 * 3600, s => Temper(bench, 15 + (50 * Math.Exp(-s / 110_000))));
        Assert.DoesNotContain("+close-valves", bench.Changes);
    }

    [Fact]
    public void BottomDrainedByOpenValves_RaisesCloseValvesWithinTheHour()
    {
        var bench = Standing(65, 10);
        bench.Run(3600, s =>
        {
            Temper(bench, 65 - (s / 3600));
            bench.Set(Channel.TankBottom, 64 - (12 * s / 3600));
        });
        Assert.Contains("+close-valves", bench.Changes);
    }

    private static MonitorBench Standing(double celsius, double periodS = 5)
    {
        var bench = new MonitorBench(s_channels, [Signal.EngineRunning]) { PeriodS = periodS };
        bench.Set(Channel.Flow, 15).Set(Channel.Return, 15)
            .Set(Channel.Surroundings, 15).Set(Signal.EngineRunning, false);
        return Temper(bench, celsius);
    }

    private static MonitorBench Temper(MonitorBench bench, double celsius) =>
        bench.Set(Channel.TankTop, celsius).Set(Channel.TankBottom, celsius - 0.5);
}
