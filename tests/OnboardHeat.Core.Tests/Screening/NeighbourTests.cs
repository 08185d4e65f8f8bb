using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Screening;

/// <summary>
/// What only neighbours can tell: stuck, off its pipe, exchanged. Each with the honest case that looks like it.
/// </summary>
public sealed class NeighbourTests
{
    private const Channel Top = Channel.TankTop;
    private const Channel Bottom = Channel.TankBottom;
    private const Channel Flow = Channel.Flow;
    private const Channel Return = Channel.Return;
    private const Channel Air = Channel.Surroundings;

    [Fact]
    public void ParkedTank_StandsStillForAnHour_AndIsBelieved()
    {
        var bench = new ScreenBench(Top, Bottom, Air) { PeriodS = 30 };
        for (var i = 0; i < 120; i++)
        {
            Assert.True(bench.Take((Top, 50), (Bottom, 49), (Air, 12))[Top].IsGood);
        }
    }

    [Fact]
    public void FlowStandsWhileReturnFalls_IsStuck_UntilItMovesAgain()
    {
        var bench = new ScreenBench(Flow, Return, Air);
        ScreenedScan screened = bench.Take((Flow, 74.5), (Return, 70), (Air, 10));
        for (var i = 0; i < 100; i++)
        {
            screened = bench.Take((Flow, 74.5), (Return, 70 - (0.1 * i)), (Air, 10));
        }

        Assert.Equal(ReadingFault.Stuck, screened[Flow].Fault);
        Assert.True(screened[Return].IsGood);
        for (var i = 0; i < 4; i++)
        {
            screened = bench.Take((Flow, 74 - (0.1 * i)), (Return, 60 - (0.1 * i)), (Air, 10));
        }

        Assert.True(screened[Flow].IsGood);
    }

    // A draw pushes cold water past the bottom while the top of a layered tank stands to the sixteenth (seen in
    // recorded nights: 90 s).
    [Fact]
    public void TopOfALayeredTank_StandsThroughADraw_AndIsBelieved()
    {
        var bench = new ScreenBench(Top, Bottom, Air);
        for (var i = 0; i < 240; i++)
        {
            Assert.True(bench.Take((Top, 60), (Bottom, Math.Max(12, 58 - (0.2 * i))), (Air, 15))[Top].IsGood);
        }
    }

    [Fact]
    public void LineAtRestInCoolAir_MayStandForEver()
    {
        var bench = new ScreenBench(Flow, Return, Air) { PeriodS = 30 };
        for (var i = 0; i < 120; i++)
        {
            Assert.True(bench.Take((Flow, 8), (Return, 30 * Math.Exp(-i / 60.0)), (Air, 7))[Flow].IsGood);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void FlowProbeOffItsPipe_IsLooseWithinTwelveSeconds(double periodS)
    {
        var bench = Driving(periodS);
        var saidS = double.NaN;
        for (var s = periodS; s <= 60 && double.IsNaN(saidS); s += periodS)
        {
            // A bare probe in air: 30 s time constant (practice: 31 s).
            var flow = 6 + (74 * Math.Exp(-s / 30));
            saidS = bench
                .Take((Top, 60), (Bottom, 59), (Flow, flow), (Return, 78), (Air, 6), (Channel.Tray, 6))[Flow].Fault
                == ReadingFault.Loose ? s : double.NaN;
        }

        Assert.InRange(saidS, 4, 12);
    }

    // A torn hose empties both lines, and a pipe of metal cools in minutes: that is a loss, and flow must stay
    // believed.
    [Theory]
    [InlineData(80)]
    [InlineData(150)]
    public void LinesCoolingAsEmptyPipes_AreNotLoose(double timeConstantS)
    {
        var bench = Driving(2);
        for (var s = 2; s <= 300; s += 2)
        {
            var screened = bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 6 + (74 * Math.Exp(-s / timeConstantS))),
                (Return, 6 + (72 * Math.Exp(-s / (2 * timeConstantS)))), (Air, 6), (Channel.Tray, 6));
            Assert.NotEqual(ReadingFault.Loose, screened[Flow].Fault);
            Assert.NotEqual(ReadingFault.Loose, screened[Return].Fault);
        }
    }

    [Fact]
    public void FlowFallsFastWhileTheTrayWarms_IsLeftToTheWatchers()
    {
        var bench = Driving(2);
        for (var s = 2; s <= 60; s += 2)
        {
            var screened = bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 6 + (74 * Math.Exp(-s / 30.0))), (Return, 78), (Air, 6),
                (Channel.Tray, 6 + Math.Min(40, 1.5 * s)));
            Assert.NotEqual(ReadingFault.Loose, screened[Flow].Fault);
        }
    }

    [Fact]
    public void PartnerFollowsAfterAll_FlowIsBelievedAgain()
    {
        var bench = Driving(2);
        ScreenedScan? screened = null;
        for (var s = 2; s <= 20; s += 2)
        {
            screened = bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 6 + (74 * Math.Exp(-s / 30.0))), (Return, 78), (Air, 6));
        }

        Assert.Equal(ReadingFault.Loose, screened![Flow].Fault);
        for (var s = 22; s <= 60; s += 2)
        {
            screened = bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 6 + (74 * Math.Exp(-s / 30.0))), (Return, 78 - (s - 20)), (Air, 6));
        }

        Assert.True(screened[Flow].IsGood);
    }

    [Fact]
    public void LooseProbeClampedAgain_IsBelievedAfterHalfAMinute()
    {
        var bench = Driving(2);
        for (var s = 2; s <= 120; s += 2)
        {
            bench.Take((Top, 60), (Bottom, 59), (Flow, 6 + (74 * Math.Exp(-s / 30.0))), (Return, 78), (Air, 6));
        }

        ScreenedScan? screened = null;
        for (var s = 2; s <= 90; s += 2)
        {
            screened = bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 80 - (73 * Math.Exp(-s / 10.0))), (Return, 78), (Air, 6));
        }

        Assert.True(screened![Flow].IsGood);
    }

    // Whoever draws a shower cools the coil and the return with it, fast; but never below the coldest water.
    [Fact]
    public void ReturnFallsInADraw_IsNotLoose()
    {
        var bench = Driving(2);
        for (var s = 2; s <= 120; s += 2)
        {
            var bottom = 12 + (47 * Math.Exp(-s / 25.0));
            var screened = bench.Take(
                (Top, 60), (Bottom, bottom), (Flow, 80), (Return, Math.Max(bottom + 4, 78 - (1.2 * s))), (Air, 6));
            Assert.NotEqual(ReadingFault.Loose, screened[Return].Fault);
        }
    }

    [Fact]
    public void ProbeThatHangsInTheAirFromTheStart_IsLooseOnceTheTankGains()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return, Air) { Engine = true };
        ScreenedScan? screened = null;
        for (var i = 0; i < 400; i++)
        {
            var tank = 20 + (0.01 * i);
            screened = bench.Take(
                (Top, tank), (Bottom, tank), (Flow, 12 + (0.0625 * (i % 3))), (Return, 70 + (0.0625 * (i % 2))),
                (Air, 11));
        }

        Assert.Equal(ReadingFault.Loose, screened![Flow].Fault);
    }

    [Fact]
    public void FlowAndReturnExchanged_IsSaidWithinThreeMinutesOfHeating()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return) { Engine = true };
        var screened = bench.Take();
        for (var s = 0; s < 180; s += 2)
        {
            var tank = 20 + (0.008 * s);
            screened = bench.Take((Top, tank), (Bottom, tank), (Flow, 70), (Return, 80));
        }

        Assert.Equal((ReadingFault.Swapped, ReadingFault.Swapped), (screened[Flow].Fault, screened[Return].Fault));
    }

    // Found by a sweep over simulated drives: with closed valves both lines cool, flow the faster, while slow tank
    // probes still rise.
    [Fact]
    public void LinesThatStandAndCool_AreNotCalledExchanged()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return) { Engine = true };
        for (var s = 0; s < 600; s += 2)
        {
            var tank = 25 + (1.5 * (1 - Math.Exp(-s / 60.0)));
            var screened = bench.Take(
                (Top, tank), (Bottom, tank), (Flow, 10 + (55 * Math.Exp(-s / 400.0))),
                (Return, 10 + (58 * Math.Exp(-s / 600.0))));
            Assert.NotEqual(ReadingFault.Swapped, screened[Flow].Fault);
        }
    }

    // Found by the same sweep: nobody exchanges probes on the road, so what was once in order is not called exchanged
    // later.
    [Fact]
    public void OrderThatWasRightBefore_IsNotCalledExchanged()
    {
        var bench = new ScreenBench(Top, Bottom);
        TakeFor(bench, 120, (Top, 55), (Bottom, 40));
        Assert.NotEqual(ReadingFault.Swapped, TakeFor(bench, 900, (Top, 50), (Bottom, 56))[Top].Fault);
    }

    // A probe that slips slowly: what it reads is no coolant's temperature while return is hot and the tank gains.
    [Fact]
    public void FlowSinksSlowlyFarBelowReturn_WhileTheTankGains_IsLoose()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return, Air) { Engine = true };
        ScreenedScan? screened = null;
        for (var s = 0; s < 1500; s += 2)
        {
            var tank = 30 + (0.008 * s);
            var flow = s < 300 ? 85 : 30 + (55 * Math.Exp(-(s - 300) / 250.0));
            screened = bench.Take(
                (Top, tank), (Bottom, tank), (Flow, flow), (Return, 78 + (0.0625 * (s % 3))), (Air, 10));
        }

        Assert.Equal(ReadingFault.Loose, screened![Flow].Fault);
        Assert.True(screened[Return].IsGood);
    }

    // With the tank near the coolant the coil takes little, and clip-ons with their offsets show return 4 K above flow
    // by right (practice).
    [Fact]
    public void ReturnReadsFourKelvinHigh_OnAHotTank_IsNotCalledExchanged()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return) { Engine = true };
        Assert.True(TakeFor(bench, 1200, (Top, 75), (Bottom, 75), (Flow, 82.5), (Return, 86.5))[Return].IsGood);
    }

    [Fact]
    public void ColdEngineAndHotTank_ReturnIsTheWarmerByRight()
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return) { Engine = true };
        Assert.True(TakeFor(bench, 600, (Top, 60), (Bottom, 58), (Flow, 25), (Return, 40))[Flow].IsGood);
    }

    [Fact]
    public void TopAndBottomExchanged_IsSaidAfterFiveMinutesOfLayers()
    {
        var bench = new ScreenBench(Top, Bottom);
        var screened = TakeFor(bench, 310, (Top, 30), (Bottom, 55));
        Assert.Equal((ReadingFault.Swapped, ReadingFault.Swapped), (screened[Top].Fault, screened[Bottom].Fault));
    }

    // Offsets of 0.8 K each way and a clip-on that reads low.
    [Fact]
    public void BottomReadsTwoAndAHalfKelvinHigh_IsNotCalledExchanged() =>
        Assert.True(TakeFor(new ScreenBench(Top, Bottom), 1800, (Top, 60), (Bottom, 62.5))[Top].IsGood);

    // Water is densest at 4 °C (any table): below it, the warmer water lies at the bottom.
    [Fact]
    public void FreezingTankUpsideDown_IsNotCalledExchanged() =>
        Assert.True(TakeFor(new ScreenBench(Top, Bottom), 1800, (Top, 0.5), (Bottom, 4))[Top].IsGood);

    private static ScreenBench Driving(double periodS)
    {
        var bench = new ScreenBench(Top, Bottom, Flow, Return, Air, Channel.Tray) { Engine = true, PeriodS = periodS };
        for (var i = 0; i * periodS < 240; i++)
        {
            bench.Take(
                (Top, 60), (Bottom, 59), (Flow, 80 + (0.0625 * (i % 2))), (Return, 78), (Air, 6), (Channel.Tray, 6));
        }

        return bench;
    }

    private static ScreenedScan TakeFor(
        ScreenBench bench, double seconds, params (Channel Channel, double Celsius)[] readings)
    {
        var screened = bench.Take(readings);
        for (var s = 0.0; s < seconds; s += bench.PeriodS)
        {
            screened = bench.Take(readings);
        }

        return screened;
    }
}
