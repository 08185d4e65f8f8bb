using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Screening;

/// <summary>When a single channel is believed, when not, and how it earns trust back.</summary>
public sealed class ChannelTrustTests
{
    private const ReadingFault Good = ReadingFault.None;

    [Fact]
    public void FirstReading_IsBelievedAtSight()
    {
        var screened = new ScreenBench(Channel.TankTop).Take((Channel.TankTop, 41));
        Assert.Equal(new ScreenedReading(41, Good, 0), screened[Channel.TankTop]);
    }

    [Fact]
    public void NeverRead_IsMissingAndNotKnown()
    {
        var screened = new ScreenBench(Channel.TankTop).Take();
        Assert.Equal(ReadingFault.Missing, screened[Channel.TankTop].Fault);
        Assert.False(screened[Channel.TankTop].IsKnown);
    }

    [Fact]
    public void GapOfOneScan_CostsOneScanMore()
    {
        var bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(80, 80);
        Assert.Equal(ReadingFault.Missing, bench.Take()[Channel.Flow].Fault);
        Assert.Equal([ReadingFault.Missing, Good, Good], bench.FaultsOf(80.5, 80.5, 80.5));
    }

    [Fact]
    public void DuringAGap_TheLastBelievedValueAges()
    {
        var bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(80);
        bench.Take();
        var reading = bench.Take()[Channel.Flow];
        Assert.Equal(80, reading.Value);
        Assert.Equal(4, reading.AgeS);
    }

    [Fact]
    public void SilentForLong_IsStale()
    {
        var bench = new ScreenBench(Channel.Flow) { PeriodS = 10 };
        bench.FaultsOf(80);
        var faults = Enumerable.Range(0, 8).Select(_ => bench.Take()[Channel.Flow].Fault).ToArray();
        Assert.Equal(ReadingFault.Missing, faults[5]);
        Assert.Equal(ReadingFault.Stale, faults[6]);
    }

    [Theory]
    [InlineData(ReadingFault.BadCrc)]
    [InlineData(ReadingFault.PowerOn)]
    [InlineData(ReadingFault.AllZero)]
    [InlineData(ReadingFault.Stale)]
    public void FaultOfTheAdapter_KeepsItsName(ReadingFault fault)
    {
        var bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(80);
        Assert.Equal(fault, bench.Fail(Channel.Flow, fault)[Channel.Flow].Fault);
    }

    [Fact]
    public void JumpOnto85_IsPowerOn_AndThreeGoodReadingsBringTrustBack()
    {
        var bench = new ScreenBench(Channel.TankTop);
        bench.FaultsOf(41, 41);
        Assert.Equal(
            [ReadingFault.PowerOn, ReadingFault.PowerOn, ReadingFault.PowerOn, ReadingFault.PowerOn, Good],
            bench.FaultsOf(85, 85, 41.0625, 41, 41));
    }

    // A warm engine really passes 85 °C: 84.5, 85.0, 85.5 as coolant does.
    [Fact]
    public void CoolantPassing85_IsBelieved()
    {
        var bench = new ScreenBench(Channel.Flow);
        Assert.All(bench.FaultsOf(82, 83, 84, 85, 85, 85, 86, 85, 84.5), fault => Assert.Equal(Good, fault));
    }

    [Fact]
    public void StartAt85_WithColdTank_IsPowerOn()
    {
        var bench = new ScreenBench(Channel.TankTop, Channel.TankBottom);
        Assert.Equal(
            ReadingFault.PowerOn, bench.Take((Channel.TankTop, 85), (Channel.TankBottom, 12))[Channel.TankTop].Fault);
    }

    [Fact]
    public void StartAt85_WithReturnAt83_IsBelieved()
    {
        var bench = new ScreenBench(Channel.Flow, Channel.Return);
        Assert.True(bench.Take((Channel.Flow, 85), (Channel.Return, 83))[Channel.Flow].IsGood);
    }

    [Fact]
    public void WholeBusAt85AtStart_IsNotBelieved_AndRealReadingsAreAfterwards()
    {
        var bench = new ScreenBench(Channel.TankTop, Channel.Flow);
        for (var i = 0; i < 2; i++)
        {
            var screened = bench.Take((Channel.TankTop, 85), (Channel.Flow, 85));
            Assert.Equal(
                (ReadingFault.PowerOn, ReadingFault.PowerOn),
                (screened[Channel.TankTop].Fault, screened[Channel.Flow].Fault));
        }

        bench.Take((Channel.TankTop, 20), (Channel.Flow, 15));
        bench.Take((Channel.TankTop, 20), (Channel.Flow, 15.5));
        Assert.True(bench.Take((Channel.TankTop, 20), (Channel.Flow, 16))[Channel.Flow].IsGood);
    }

    [Fact]
    public void StandingOn85ForMinutes_IsNeverBelieved()
    {
        var bench = new ScreenBench(Channel.TankTop);
        bench.FaultsOf(70, 70);
        Assert.All(
            bench.FaultsOf([.. Enumerable.Repeat(85.0, 200)]), fault => Assert.Equal(ReadingFault.PowerOn, fault));
    }

    [Fact]
    public void JumpOntoZero_IsAllZero_AndAWinterNightPassesIt()
    {
        var bench = new ScreenBench(Channel.Surroundings);
        Assert.All(bench.FaultsOf(0.5, 0.25, 0, -0.0625, 0, -0.5), fault => Assert.Equal(Good, fault));
        bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(60, 60);
        Assert.Equal([ReadingFault.AllZero], bench.FaultsOf(0));
    }

    // -0.0625 is FFFF in the register: what an empty bus reads.
    [Fact]
    public void JumpOntoAllOnes_IsMissing()
    {
        var bench = new ScreenBench(Channel.Tray);
        bench.FaultsOf(16, 16);
        Assert.Equal([ReadingFault.Missing], bench.FaultsOf(-0.0625));
    }

    [Theory]
    [InlineData(Channel.TankTop, 121)]
    [InlineData(Channel.Surroundings, 95)]
    [InlineData(Channel.ColdSupply, 75)]
    [InlineData(Channel.Flow, -50)]
    public void BeyondWhatThePlaceCanBe_IsOutOfRange(Channel channel, double celsius)
    {
        var bench = new ScreenBench(channel);
        bench.FaultsOf(20, 20);
        Assert.Equal([ReadingFault.OutOfRange], bench.FaultsOf(celsius));
    }

    [Fact]
    public void ReadingBuiltWithNaN_IsNeverBelieved()
    {
        var screen = new ReadingScreen(new FittedSet([Channel.Flow], []));
        foreach (var value in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1e308])
        {
            var scan = new Scan();
            scan[Channel.Flow] = new Reading(value, ReadingFault.None);
            Assert.Equal(ReadingFault.OutOfRange, screen.Observe(scan)[Channel.Flow].Fault);
        }
    }

    [Fact]
    public void SpikeOnATank_IsAnImplausibleStep()
    {
        var bench = new ScreenBench(Channel.TankTop);
        bench.FaultsOf(55, 55);
        Assert.Equal(ReadingFault.ImplausibleStep, bench.FaultsOf(66)[0]);
    }

    [Fact]
    public void RealStepTooFastForThePlace_IsAcceptedAtTheFifthReading()
    {
        var bench = new ScreenBench(Channel.TankTop);
        bench.FaultsOf(20, 20);
        var faults = bench.FaultsOf(60, 60.1, 60.2, 60.2, 60.3, 60.3);
        Assert.Equal(4, faults.Count(f => f == ReadingFault.ImplausibleStep));
        Assert.Equal([Good, Good], faults.Skip(4));
    }

    [Fact]
    public void ThereAndBackWithinTwoScans_IsNoThermometer()
    {
        var bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(78, 78, 88);
        Assert.Equal([ReadingFault.ImplausibleStep], bench.FaultsOf(78));
    }

    // A probe of 8 s lag in a tray on which 90 °C coolant lands: first-order response, from 10 °C. The one rise never
    // to be missed.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(30)]
    public void CoolantLandingInTheTray_IsBelievedInEveryScan(double periodS)
    {
        var bench = new ScreenBench(Channel.Tray) { PeriodS = periodS };
        bench.FaultsOf(10, 10, 10);
        var rise = Enumerable.Range(1, 20).Select(i => 10 + (80 * (1 - Math.Exp(-i * periodS / 8))));
        Assert.All(bench.FaultsOf([.. rise]), fault => Assert.Equal(Good, fault));
    }

    [Theory]
    [InlineData(101)]
    [InlineData(102)]
    [InlineData(103)]
    public void NoiseOfAWetPlug_IsHardlyEverBelieved(int seed)
    {
        var random = new Random(seed);
        var bench = new ScreenBench(Channel.Flow);
        bench.FaultsOf(78, 78, 78);
        var believed = bench.FaultsOf(
            [.. Enumerable.Range(0, 150).Select(_ => 78 + (60 * (random.NextDouble() - 0.5)))])
            .Count(f => f == Good);
        Assert.True(believed <= 6, $"believed {believed} of 150 with seed {seed}");
        Assert.Equal(Good, bench.FaultsOf([.. Enumerable.Repeat(78.0, 45)])[^1]);
    }
}
