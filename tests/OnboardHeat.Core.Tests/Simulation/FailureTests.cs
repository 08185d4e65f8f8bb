using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Core.Tests.Simulation;

public sealed class FailureTests
{
    private const double AtS = 3000;

    private static readonly DrivePlan s_plan = new()
    {
        Legs = [new(LegKind.Country, 90)], TankBottomCelsius = 30, TankTopCelsius = 40,
    };

    [Theory]
    [InlineData(HappeningKind.TankFlowHoseOff)]
    [InlineData(HappeningKind.TankReturnHoseOff)]
    [InlineData(HappeningKind.EngineFlowHoseOff)]
    [InlineData(HappeningKind.EngineReturnHoseOff)]
    public void HoseOff_LosesCoolantAndEndsTheFlowWithinMinutes(HappeningKind kind)
    {
        var van = Driven(kind, 1, AtS + 300);
        Assert.InRange(van.Truth.CoolantLostLitres, 3, 9);
        Assert.InRange(van.Truth.CoilLitresPerMinute, 0, 0.1);
        Assert.Equal(AtS, van.Truth.Failure!.Value.AtS);
    }

    [Fact]
    public void HoseOff_OverheatsTheEngineLater()
    {
        var before = Driven(HappeningKind.TankFlowHoseOff, 1, AtS - 10).Truth.EngineCelsius;
        Assert.InRange(Driven(HappeningKind.TankFlowHoseOff, 1, AtS + 600).Truth.EngineCelsius, before + 15, 131);
    }

    [Fact]
    public void HoseOffAtTheTank_WarmsTheTrayWithinSeconds()
    {
        var before = Driven(HappeningKind.TankFlowHoseOff, 1, AtS - 2).Scan[Channel.Tray].Value;
        var after = Driven(HappeningKind.TankFlowHoseOff, 1, AtS + 16).Scan[Channel.Tray].Value;
        Assert.True(after > before + 5, $"tray {before} to {after}");
    }

    [Fact]
    public void HoseOffAtTheEngine_LeavesTheTrayDryAndTheLinesCoolSlowly()
    {
        // A lagged hose full of still coolant takes 10 to 30 minutes to cool (common practice, no source).
        var before = Driven(HappeningKind.EngineFlowHoseOff, 1, AtS - 2);
        var after = Driven(HappeningKind.EngineFlowHoseOff, 1, AtS + 120);
        Assert.InRange(after.Scan[Channel.Tray].Value - before.Scan[Channel.Tray].Value, -1, 1);
        Assert.InRange(before.Scan[Channel.Flow].Value - after.Scan[Channel.Flow].Value, 2, 30);
    }

    [Fact]
    public void Weep_LosesOnlyWhatItIsToldTo()
    {
        var van = Driven(HappeningKind.Weep, 0.1, AtS + 600);
        Assert.InRange(van.Truth.CoolantLostLitres, 0.98, 1.02);
        Assert.True(van.Truth.CoilLitresPerMinute > 2, "all else flows on");
    }

    [Fact]
    public void ClosedValves_StopTheFlowAndLoseNothing()
    {
        var van = Driven(HappeningKind.ValvesClosed, 1, AtS + 60);
        Assert.InRange(van.Truth.CoilLitresPerMinute, -0.01, 0.01);
        Assert.Equal(0, van.Truth.CoolantLostLitres);
        Assert.Null(van.Truth.Failure);
    }

    [Fact]
    public void StuckThermostat_KeepsTheEngineCool()
    {
        var warm = Driven(HappeningKind.CabHeater, 0, 5000).Truth.EngineCelsius;
        var stuck = Driven(HappeningKind.ThermostatStuck, 0.6, 5000).Truth.EngineCelsius;
        Assert.True(stuck < warm - 15, $"{stuck:0.0} against {warm:0.0} °C");
    }

    [Fact]
    public void OpenValvesOverNight_LetATrapFreeVanLoseItsHeatBackwards()
    {
        var plan = new DrivePlan
        {
            Legs = [new(LegKind.Parked, 240)],
            TankBottomCelsius = 65,
            TankTopCelsius = 65,
            ScanPeriodS = 10,
        };
        var open = new SimulatedVan(new VanTraits(), plan, 1);
        var closed = new SimulatedVan(new VanTraits(), plan.With(new Happening(0, HappeningKind.ValvesClosed)), 1);
        while (open.Step() && closed.Step())
        {
        }

        Assert.True(
            open.Truth.CoilLitresPerMinute < 0, "fed from the top, the coil lets its warm water out by the flow line");
        Assert.True(
            open.Truth.MeanCelsius < closed.Truth.MeanCelsius - 4,
            $"{open.Truth.MeanCelsius:0.0} / {closed.Truth.MeanCelsius:0.0}");
    }

    [Fact]
    public void ProbeOffItsPipe_FollowsTheAirAndNothingIsLost()
    {
        var van = new SimulatedVan(
            new VanTraits(), s_plan.With(new Happening(AtS, HappeningKind.ProbeLoose, Size: 0.05, On: Channel.Flow)),
            5);
        while (van.Step() && van.Truth.ElapsedS < AtS + 900)
        {
        }

        Assert.True(van.Scan[Channel.Flow].Value < van.Scan[Channel.Return].Value - 20);
        Assert.Equal(0, van.Truth.CoolantLostLitres);
    }

    private static SimulatedVan Driven(HappeningKind kind, double size, double untilS)
    {
        var van = new SimulatedVan(new VanTraits(), s_plan.With(new Happening(AtS, kind, Size: size)), 5);
        while (van.Step() && van.Truth.ElapsedS < untilS)
        {
        }

        return van;
    }
}
