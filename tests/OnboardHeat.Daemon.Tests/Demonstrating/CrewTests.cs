using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Demo;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Tests.Demonstrating;

public sealed class CrewTests
{
    [Fact]
    public void CoolantLossTold_MakesThemStopCloseTheValvesAndLoseLess()
    {
        // GIVEN the day on which the hose comes off WHEN it is told 15 s later THEN they stop the engine and shut the
        // valves.
        var told = Drive(toldAfterS: 15);
        var untold = Drive(toldAfterS: double.PositiveInfinity);
        Assert.False(told.Truth.IsEngineOn);
        Assert.True(told.Truth.AreValvesClosed);
        Assert.True(
            told.Truth.EngineCelsius < untold.Truth.EngineCelsius,
            $"{told.Truth.EngineCelsius:0} / {untold.Truth.EngineCelsius:0} °C");
    }

    [Fact]
    public void AnAlarm_IsAcknowledgedSomeSecondsLater()
    {
        var van = DemoDay.Begin(1);
        var crew = new Crew(van);
        van.Step();
        crew.Hear([new AlarmChange(AlarmTable.Of(AlarmKind.RatingExceeded), "tank-hose", true, "")]);
        var acknowledgedAtS = 0.0;
        while (van.Step() && acknowledgedAtS == 0)
        {
            crew.Hear([]);
            acknowledgedAtS = van.Scan.Actions.Count > 0 ? van.Truth.ElapsedS : 0;
        }

        Assert.InRange(acknowledgedAtS, 20, 40);
    }

    private static SimulatedVan Drive(double toldAfterS)
    {
        var van = DemoDay.Begin(1);
        var crew = new Crew(van);
        var isTold = false;
        while (van.Step() && van.Truth.ElapsedS < DrivePlans.MountainHoseOffAtS + 200)
        {
            var isNow = !isTold && van.Truth.ElapsedS >= DrivePlans.MountainHoseOffAtS + toldAfterS;
            isTold |= isNow;
            crew.Hear(isNow ? [new AlarmChange(AlarmTable.Of(AlarmKind.CoolantLoss), "", true, "")] : []);
        }

        return van;
    }
}
