using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Circuit;

namespace OnboardHeat.Core.Tests.Watch;

/// <summary>
/// Issue 5: told within seconds with spray, within minutes by the lines alone, and silence otherwise.
/// </summary>
public sealed class CoolantLossWatcherTests
{
    private const string Loss = "+coolant-loss", Stopped = "+circulation-stopped";

    [Fact]
    public void SprayOnTrayAndAir_IsToldWithinTwentySeconds_InFigures()
    {
        var van = new CircuitBench().WarmedUp();
        Assert.DoesNotContain(Loss, van.Changes);
        van.IsSpraying = true;
        van.Run(20);
        Assert.Contains(Loss, van.Changes);
        Assert.Matches(@"tray \+\d+\.\d K in \d+ s", van.Bench.Alarm("coolant-loss")!.Because);
        Assert.StartsWith(
            "Stop when it is safe", van.Bench.Alarm("coolant-loss")!.WhatToDo[0], StringComparison.Ordinal);
        Assert.Contains(van.Bench.Last!.Circuit.Evidence, e => e is { Sign: "tray-rise", StoppedNats: > 3 });
    }

    [Fact]
    public void BaredLines_AreToldByTheLinesAlone()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        (van.IsCirculating, van.LineTauS) = (false, 450);
        van.Run(180);
        Assert.Contains(Loss, van.Changes);
    }

    [Fact]
    public void FullLinesThatStandStill_AreStoppedAndNotALoss()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        van.IsCirculating = false;
        van.Run(300);
        Assert.Contains(Stopped, van.Changes);
        Assert.DoesNotContain(Loss, van.Changes);
        Assert.Contains("valves closed", van.Bench.Alarm("circulation-stopped")!.WhatToDo[1], StringComparison.Ordinal);
    }

    [Fact]
    public void EngineStopped_IsNothing()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        (van.IsEngineOn, van.IsCirculating) = (false, false);
        van.Run(1200);
        Assert.DoesNotContain(van.Changes, c => c is Loss or Stopped);
    }

    [Fact]
    public void EngineStoppedSoonAfterTheHoseCameOff_IsStillTold()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        (van.IsCirculating, van.LineTauS) = (false, 350);
        van.Run(40);
        van.IsEngineOn = false;
        van.Run(200);
        Assert.Contains(Loss, van.Changes);
    }

    [Fact]
    public void Descent_OfElevenKelvin_IsNothing()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        van.EngineCelsius = 75;
        van.Run(300);
        Assert.DoesNotContain(van.Changes, c => c is Loss or Stopped);
    }

    [Fact]
    public void FlowProbeStuck_SprayIsToldAllTheSame()
    {
        var van = new CircuitBench().WarmedUp();
        van.IsFlowStuck = true;
        van.Run(60);
        van.IsSpraying = true;
        van.Run(30);
        Assert.Contains(Loss, van.Changes);
    }

    [Fact]
    public void TrayProbeUnpluggedBefore_AirAndLinesTellIt()
    {
        var van = new CircuitBench().WarmedUp();
        van.IsTrayGone = true;
        van.Run(300);
        (van.IsSpraying, van.IsCirculating, van.LineTauS) = (true, false, 450);
        van.Run(120);
        Assert.Contains(Loss, van.Changes);
    }

    [Fact]
    public void FailureInTheFirstMinuteAfterStart_IsToldBySpray()
    {
        var van = new CircuitBench().WarmedUp();
        (van.IsEngineOn, van.IsCirculating) = (false, false);
        van.Run(600);
        (van.IsEngineOn, van.IsCirculating, van.IsSpraying) = (true, false, true);
        van.Run(40);
        Assert.Contains(Loss, van.Changes);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ParkedNightWithALyingEngineSignal_IsSilent(bool isBouncing)
    {
        // GIVEN a run that begins parked, hot lines cooling, WHEN the contact is stuck at 1 or bounces all night
        var van = new CircuitBench(periodS: 10) { IsEngineOn = false, IsCirculating = false, Signalled = true };
        for (var i = 0; i < 120; i++)
        {
            van.Signalled = !isBouncing || i % 2 == 0;
            van.Run(240);
        }

        // THEN nobody is woken.
        Assert.DoesNotContain(van.Changes, c => c is Loss or Stopped);
    }

    [Fact]
    public void NoEngineSignal_IsInferred_AndTheAlarmSaysSo()
    {
        var van = new CircuitBench(hasSignal: false).WarmedUp();
        Assert.True(van.Bench.Last!.Circuit is { IsEngineRunning: true, IsEngineInferred: true });
        van.IsSpraying = true;
        van.Run(30);
        Assert.EndsWith(
            "engine taken to run, by the lines", van.Bench.Alarm("coolant-loss")!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void RestartAfterItWasTold_ItStandsFromTheFirstScan_InItsOldWords()
    {
        var van = new CircuitBench().WarmedUp();
        van.IsSpraying = true;
        van.Run(30);
        var told = van.Bench.Alarm("coolant-loss")!.Because;
        var after = new CircuitBench(van.Bench.Monitor.Keep()).Run(2);
        Assert.Equal([Loss], after.Changes.Where(c => c.Contains("coolant-loss", StringComparison.Ordinal)));
        Assert.True(after.Bench.Alarm("coolant-loss") is { IsPresent: true });
        Assert.Equal(told, after.Bench.Alarm("coolant-loss")!.Because);
    }

    [Fact]
    public void RestartBeforeItWasTold_JudgesAnewFromTheEvidence()
    {
        var van = new CircuitBench().WarmedUp();
        van.IsSpraying = true;
        van.Run(2);
        Assert.DoesNotContain(Loss, van.Changes);
        var after = new CircuitBench(van.Bench.Monitor.Keep());
        after.Run(20);
        after.IsSpraying = true;
        after.Run(40);
        Assert.Contains(Loss, after.Changes);
    }

    [Fact]
    public void RestartInAFailure_TeachesNothing()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        (van.IsCirculating, van.LineTauS) = (false, 450);
        van.Run(40);
        var before = van.Bench.Monitor.Keep().Learnt.Circuit;
        var after = new CircuitBench(van.Bench.Monitor.Keep(), hasTray: false)
        {
            IsCirculating = false,
            LineTauS = 450,
        };
        after.Run(120);
        after.IsEngineOn = false;
        after.Run(400);
        Assert.Equal(before.FlowDecayPerS, after.Bench.Monitor.Keep().Learnt.Circuit.FlowDecayPerS);
    }

    [Fact]
    public void OrdinaryStop_TeachesHowThisVansFullLinesCool()
    {
        var van = new CircuitBench { LineTauS = 1800 }.WarmedUp();
        van.IsEngineOn = false;
        van.Run(200);
        Assert.Equal(1800, 1 / van.Bench.Monitor.Keep().Learnt.Circuit.FlowDecayPerS!.Value.Value, 150.0);
    }

    [Fact]
    public void FordThatChillsTheHoses_IsNothing()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        van.EngineCelsius = 86;
        van.ChillS = 60;
        van.Run(30);
        van.ChillS = 0;
        van.Run(200);
        Assert.DoesNotContain(van.Changes, c => c is Loss or Stopped);
    }

    [Fact]
    public void LineKeptHotAfterAShortStop_IsWatchedAgain()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        van.IsEngineOn = false;
        van.Run(120);
        van.IsEngineOn = true;
        van.Run(240);
        (van.IsCirculating, van.LineTauS) = (false, 420);
        van.Run(180);
        Assert.Contains(Loss, van.Changes);
    }

    [Fact]
    public void Told_StandsUntilRepaired_HoweverQuietTheEmptyCircuitIs()
    {
        var van = new CircuitBench().WarmedUp();
        (van.IsSpraying, van.IsCirculating, van.LineTauS) = (true, false, 400);
        van.Run(60);
        (van.IsSpraying, van.IsEngineOn) = (false, false);
        van.Run(3600);
        Assert.DoesNotContain("-coolant-loss", van.Changes);
        van.Bench.Do(ActionKind.Repaired);
        van.Run(120);
        Assert.Contains("-coolant-loss", van.Changes);
    }

    [Fact]
    public void GapOfTwoMinutes_IsNoEvidence()
    {
        var van = new CircuitBench(hasTray: false).WarmedUp();
        var before = van.Changes.Count;
        van.Bench.Set(Channel.Flow, null).Set(Channel.Return, null).Run(120);
        van.Run(120);
        Assert.DoesNotContain(van.Changes.Skip(before), c => c is Loss or Stopped);
    }
}
