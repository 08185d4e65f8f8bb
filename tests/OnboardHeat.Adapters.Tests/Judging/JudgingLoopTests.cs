using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;

namespace OnboardHeat.Adapters.Tests.Judging;

public sealed class JudgingLoopTests
{
    [Fact]
    public async Task TwoSecondScans_AreJudgedEveryTwoSecondsOfTheMonotonicClock()
    {
        await using var bench = new LoopBench();
        bench.Start();
        await bench.PassAsync(10);
        Assert.Equal([0, 2, 4, 6, 8, 10], Drain(bench).Select(turn => turn.Scan.Elapsed.TotalSeconds));
    }

    [Fact]
    public async Task ReadingThatNeverEnds_StopsTheFeedingAfterThreePeriods_WhileTheLoopTurns()
    {
        await using var bench = new LoopBench();
        bench.Start();
        await bench.PassAsync(10);
        bench.Holds = true;
        await bench.PassAsync(2);
        // The scan due at 12 s hangs: three periods on, at 18 s, the feeding ends.
        await bench.PassAsync(5.5);
        var (fedBefore, turnsBefore) = (bench.Fed, bench.Loop.Turns);
        Assert.True(fedBefore > 0);
        await bench.PassAsync(60);
        Assert.Equal(fedBefore, bench.Fed);
        Assert.True(bench.Loop.Turns - turnsBefore >= 12, $"turned {bench.Loop.Turns - turnsBefore} times in 60 s");
    }

    [Fact]
    public async Task HungLoop_StopsTheFeeding()
    {
        await using var bench = new LoopBench();
        using var hang = new ManualResetEventSlim();
        bench.Start();
        await bench.PassAsync(4);
        bench.Inbox.Offer(new PersonAction(ActionKind.Note, "", "before"));
        await bench.PassAsync(0.5);
        var fed = bench.Fed;
        // The loop itself blocks in the middle of a turn, as a bug in judging would make it.
        bench.Loop.BeforeTurn = hang.Wait;
        bench.Wake.Call();
        for (var i = 0; i < 60; i++)
        {
            bench.Time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }

        Assert.InRange(bench.Fed, fed, fed + 1);
        bench.Loop.BeforeTurn = null;
        hang.Set();
    }

    [Fact]
    public async Task ThirtySecondScansForTwoMinutes_GoOnFeedingAtLeastEveryFiveSeconds()
    {
        await using var bench = new LoopBench(drivingS: 30, parkedS: 30);
        bench.Start();
        await bench.PassAsync(0.5);
        for (var span = 0; span < 24; span++)
        {
            var fed = bench.Fed;
            await bench.PassAsync(5);
            Assert.True(bench.Fed > fed, $"nothing was fed in the five seconds from {span * 5} s");
        }

        Assert.Equal(5, bench.Scans);
    }

    [Fact]
    public async Task ParkedVan_IsReadSlowlyAfterTenQuietMinutes_AndAtOnceFastWhenALineMoves()
    {
        await using var bench = new LoopBench { Engine = false };
        bench.Start();
        await bench.PassAsync(640);
        var parked = Drain(bench);
        Assert.Equal(30, (parked[^1].Scan.Elapsed - parked[^2].Scan.Elapsed).TotalSeconds);
        bench.FlowC += 0.5;
        await bench.PassAsync(36);
        var moved = Drain(bench);
        Assert.Equal(2, (moved[^1].Scan.Elapsed - moved[^2].Scan.Elapsed).TotalSeconds);
    }

    [Fact]
    public async Task EngineThatStarts_IsScannedAtOnceOnAParkedVan()
    {
        await using var bench = new LoopBench { Engine = false };
        bench.Start();
        await bench.PassAsync(632);
        Drain(bench);
        bench.Engine = true;
        bench.Wake.CallForScan();
        await bench.PassAsync(4.5);
        Assert.Equal([632, 634, 636], Drain(bench).Select(turn => turn.Scan.Elapsed.TotalSeconds));
    }

    [Fact]
    public async Task ActionOnAParkedVan_IsJudgedAtOnceAndOnce()
    {
        await using var bench = new LoopBench { Engine = false };
        bench.Start();
        await bench.PassAsync(640);
        Drain(bench);
        bench.Inbox.Offer(new PersonAction(ActionKind.Drained, "", ""));
        await bench.PassAsync(0.5);
        var turn = Assert.Single(Drain(bench));
        Assert.Equal(ActionKind.Drained, Assert.Single(turn.Scan.Actions).Kind);
        Assert.True(bench.Kept[^1].IsDrained);
    }

    [Fact]
    public async Task WallClockThatJumps_DoesNotMoveElapsed()
    {
        await using var bench = new LoopBench();
        bench.Start();
        await bench.PassAsync(4);
        bench.Time.Step = TimeSpan.FromDays(-200);
        await bench.PassAsync(2);
        var turns = Drain(bench);
        Assert.Equal(6, turns[^1].Scan.Elapsed.TotalSeconds);
        Assert.True(turns[^1].Scan.Utc < turns[0].Scan.Utc);
    }

    [Fact]
    public async Task ClockThatWasTrustedOnce_StaysTrusted()
    {
        await using var bench = new LoopBench();
        bench.Start();
        await bench.PassAsync(2);
        bench.IsTrusted = true;
        await bench.PassAsync(2);
        bench.IsTrusted = false;
        await bench.PassAsync(2);
        Assert.Equal([false, false, true, true], Drain(bench).Select(turn => turn.Scan.IsUtcTrusted));
    }

    [Fact]
    public async Task StateIsKept_OnChangeEveryFiveMinutesAndAtTheEnd()
    {
        await using var bench = new LoopBench();
        bench.Start();
        await bench.PassAsync(299);
        Assert.Empty(bench.Kept);
        await bench.PassAsync(2);
        Assert.Single(bench.Kept);
        await bench.StopAsync();
        Assert.Equal(2, bench.Kept.Count);
        Assert.True(bench.Turns.Reader.Completion.IsCompleted || bench.Turns.Reader.Count > 0);
    }

    [Fact]
    public async Task HouseReport_ComesWithTheNextScan()
    {
        await using var bench = new LoopBench();
        bench.House.SetHistoryStopped("the card is full");
        bench.Start();
        await bench.PassAsync(0.5);
        Assert.Equal("the card is full", Assert.Single(Drain(bench)).Scan.House.HistoryStopped);
    }

    [Fact]
    public async Task BugInTheSource_EndsTheLoopWithIt()
    {
        await using var bench = new LoopBench { Throws = new InvalidCastException("a bug") };
        bench.Start();
        await Assert.ThrowsAsync<InvalidCastException>(() => bench.Running);
        Assert.False(bench.IsReady);
    }

    [Fact]
    public async Task FirstJudgedScan_SaysReady()
    {
        await using var bench = new LoopBench { Holds = true };
        bench.Start();
        await bench.PassAsync(1);
        Assert.False(bench.IsReady);
        await using var sound = new LoopBench();
        sound.Start();
        await sound.PassAsync(0.5);
        Assert.True(sound.IsReady);
    }

    private static List<Turn> Drain(LoopBench bench)
    {
        var turns = new List<Turn>();
        while (bench.Turns.Reader.TryRead(out var turn))
        {
            turns.Add(turn);
        }

        return turns;
    }
}
