using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class OddTankTests
{
    [Fact]
    public void VolumeStatedAQuarterTooLarge_ShowsAsAQuarterMoreEnergy()
    {
        // Nothing in the readings of a standing tank tells its volume: energy goes with what was stated.
        var right = Standing(Fresh(24), 60, 58, 900).Forecast().StoredEnergyKWh!.Value;
        var large = Standing(Fresh(30), 60, 58, 900).Forecast().StoredEnergyKWh!.Value;
        Assert.Equal(1.25, large / right, 0.02);
    }

    [Fact]
    public void GapOfHours_LeavesTheReadingsTheLastWord()
    {
        var monitor = Standing(Fresh(24), 60, 58, 900);
        monitor.Observe(ScanAt(900 + (9 * 3600), 48, 46));
        for (var s = 20; s <= 1200; s += 20)
        {
            monitor.Observe(ScanAt(900 + (9 * 3600) + s, 48, 46));
        }

        var picture = monitor.Observe(ScanAt(900 + (9 * 3600) + 1220, 48, 46));
        Assert.InRange(picture.Tank.TopCelsius.Value, 47, 49);
        Assert.True(picture.Tank.TopCelsius.Deviation > 0.05);
    }

    [Fact]
    public void RestartInTheMiddleOfADraw_IsNotSureHowHighTheColdStands()
    {
        var before = Standing(Fresh(24), 60, 58, 900);
        for (var s = 910; s <= 960; s += 10)
        {
            before.Observe(ScanAt(s, 60, 58 - ((s - 900) * 0.5)));
        }

        var after = new Monitor(Van(24), before.Keep(), ForecastTiming.WhenAsked);
        Standing(after, 60, 20, 300);
        var forecast = after.Forecast();
        Assert.True(forecast.ShowerMinutesHigh - forecast.ShowerMinutesLow > 1.5);
        Assert.InRange(forecast.ShowerMinutesLow!.Value, 0, 7);
    }

    [Fact]
    public void ProbesTwoKelvinApart_KeepTheTruthWithinTwoDeviations()
    {
        var tank = Standing(Fresh(24), 61, 59, 7200, 5).Observe(ScanAt(7205, 61, 59)).Tank;
        Assert.InRange(tank.MeanCelsius.Value, 59, 61);
        Assert.True(Math.Abs(tank.MeanCelsius.Value - 60) < 4 * tank.MeanCelsius.Deviation);
    }

    [Fact]
    public void LoneProbe_HoldsAColdTankBelowForPossible()
    {
        var monitor = new Monitor(Van(24, Channel.TankTop), KeptState.Fresh, ForecastTiming.WhenAsked);
        var forecast = Standing(monitor, 60, double.NaN, 600).Forecast();
        Assert.True(forecast.ShowerMinutesLow < 0.75 * forecast.ShowerMinutes);
        Assert.True(forecast.ShowerMinutesHigh < 1.2 * forecast.ShowerMinutes);
    }

    private static Monitor Fresh(double litres) => new(Van(litres), KeptState.Fresh, ForecastTiming.WhenAsked);

    private static VanDescription Van(double litres, params Channel[] channels) => new()
    {
        Fitted = new FittedSet(
            channels.Length > 0 ? channels : [Channel.TankTop, Channel.TankBottom, Channel.Surroundings],
            [Signal.EngineRunning]),
        Tank = new TankDescription { VolumeLitres = litres, VesselMassKg = 5 * litres / 24 },
        Shower = new ShowerDescription(),
    };

    private static Monitor Standing(Monitor monitor, double top, double bottom, double forS, double stepS = 10)
    {
        for (var s = 0.0; s <= forS; s += stepS)
        {
            monitor.Observe(ScanAt(s, top, bottom));
        }

        return monitor;
    }

    private static Scan ScanAt(double elapsedS, double top, double bottom)
    {
        var scan = new Scan { Elapsed = TimeSpan.FromSeconds(elapsedS) };
        scan[Channel.TankTop] = Reading.Of(top);
        if (double.IsFinite(bottom))
        {
            scan[Channel.TankBottom] = Reading.Of(bottom);
        }

        scan[Channel.Surroundings] = Reading.Of(15);
        scan[Signal.EngineRunning] = false;
        return scan;
    }
}
