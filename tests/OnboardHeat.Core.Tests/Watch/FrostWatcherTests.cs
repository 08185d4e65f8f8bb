using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class FrostWatcherTests
{
    [Fact]
    public void WaterAtTwoDegrees_IsToldAfterAMinute_AndClearedWellAbove()
    {
        var bench = new MonitorBench([Channel.ColdSupply], []).Set(Channel.ColdSupply, 1.9).Run(70);
        Assert.Equal(["+frost"], bench.Changes);
        bench.Set(Channel.ColdSupply, 3).Run(1200);
        Assert.Equal(["+frost"], bench.Changes);
        bench.Set(Channel.ColdSupply, 5).Run(700);
        Assert.Equal(["+frost", "-frost"], bench.Changes);
    }

    [Fact]
    public void ColdNight_IsForecastWithATime_BeforeItFreezes()
    {
        // GIVEN a tank at 14 °C with closed valves parked in the open at -14 °C WHEN it cools THEN the warning comes
        // hours before, with hours in it.
        var plan = new DrivePlan
        {
            Legs = [new(LegKind.Parked, 36 * 60)], OutsideCelsius = -14, DaySwingK = 2, ShelterCelsius = -8,
            EngineCelsius = -8,
            TankBottomCelsius = 14, TankTopCelsius = 14, ScanPeriodS = 60,
            Happenings = [new Happening(0, HappeningKind.ValvesClosed)],
        };
        var van = new SimulatedVan(new VanTraits().With(Kits.Full), plan, 1);
        var monitor = new Monitor(
            new VanDescription { Fitted = Kits.Full }, KeptState.Fresh, ForecastTiming.EveryTenSeconds);
        double? toldAtS = null, forecastS = null, nearAtS = null;
        while (van.Step() && nearAtS is null)
        {
            var picture = monitor.Observe(van.Scan);
            if (toldAtS is null
                && picture.Changes.FirstOrDefault(c => c.IsRaised && c.Definition.Name == "frost") is { } told)
            {
                Assert.Contains("will near freezing in about", told.Because, StringComparison.Ordinal);
                (toldAtS, forecastS) = (picture.Elapsed.TotalSeconds, picture.Forecast.FrostInS);
            }

            nearAtS = van.Truth.BottomCelsius <= 2 ? van.Truth.ElapsedS : null;
        }

        Assert.NotNull(nearAtS);
        var leftS = nearAtS - toldAtS;
        Assert.True(leftS > 3 * 3600, $"told at {toldAtS / 3600:0.0} h, near freezing at {nearAtS / 3600:0.0} h");
        Assert.InRange(forecastS!.Value / leftS!.Value, 0.6, 1.6);
    }

    [Fact]
    public void DrainedTank_IsNoFrost_ButAPipeStillIs()
    {
        var bench = new MonitorBench([Channel.TankTop, Channel.Outlet], [])
            .Set(Channel.TankTop, 10).Set(Channel.Outlet, 10).Run(10).Do(ActionKind.Drained).Run(2);
        bench.Set(Channel.TankTop, 1).Run(1000, _ => { });
        Assert.DoesNotContain("+frost", bench.Changes);
        bench.Set(Channel.Outlet, 1).Run(200);
        Assert.Contains("+frost", bench.Changes);
    }
}
