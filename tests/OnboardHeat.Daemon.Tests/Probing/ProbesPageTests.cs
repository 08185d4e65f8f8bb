using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Daemon.Probing;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Tests.Probing;

public sealed class ProbesPageTests
{
    private readonly OnboardHeatOptions _options = new()
    {
        Probes = [new ProbeOptions { Channel = "flow", Rom = SomeSight.Flow, OffsetKelvin = 0.25 }],
    };

    [Fact]
    public void SoundProbe_IsShownWithItsReadingRoleAndBothOffsets()
    {
        KeptProbe[] kept = [new("flow", SomeSight.Flow, -0.1)];
        var page = Page(kept, new SeenProbe(SomeSight.Flow, Reading.Of(60)));
        Assert.Equal(
            ["  28-0000000a1c03     60.15 °C  flow            +0.25 K by the owner  -0.10 K by pair check"], page);
    }

    [Fact]
    public void OffsetLearntOnAnotherProbe_IsNotTaken()
    {
        KeptProbe[] kept = [new("flow", SomeSight.Stranger, 1.5)];
        Assert.Equal(
            60.25, BusSight.Of(_options, kept, [new SeenProbe(SomeSight.Flow, Reading.Of(60))]).At("flow")?.Celsius);
    }

    [Fact]
    public void Fault_IsNamed() => Assert.Contains(
        "bad-crc", Page(
            [], new SeenProbe(SomeSight.Flow, Reading.Failed(ReadingFault.BadCrc)))[0], StringComparison.Ordinal);

    [Fact]
    public void AnotherFamily_IsWarnedOf() => Assert.Contains(
        Page([], new SeenProbe("10-000802be73fa", Reading.Of(20)), new SeenProbe(SomeSight.Flow, Reading.Of(20))),
        line => line.StartsWith("! 10-000802be73fa is of family 10", StringComparison.Ordinal));

    [Fact]
    public void TwoChannelsOnOneRom_AreWarnedOf()
    {
        _options.Probes = [.. _options.Probes, new ProbeOptions { Channel = "tray", Rom = SomeSight.Flow }];
        Assert.Contains(
            Page([], new SeenProbe(SomeSight.Flow, Reading.Of(20))),
            line => line.Contains("configured as flow and tray", StringComparison.Ordinal));
    }

    [Fact]
    public void ConfiguredProbeThatIsNotThere_IsWarnedOf() => Assert.Contains(
        Page([], new SeenProbe(SomeSight.Stranger, Reading.Of(20))),
        line => line.Contains("flow (28-0000000a1c03) is not on the bus", StringComparison.Ordinal));

    [Theory]
    [InlineData(0.25, 0.0, false)]
    [InlineData(1.0, 0.0, false)]
    [InlineData(1.01, 0.0, true)]
    [InlineData(0.5, 0.6, true)]
    [InlineData(1.5, -1.5, true)]
    public void OffsetBeyondWhatASoundProbeCanHave_IsWarnedOf(double ownerK, double learntK, bool isWarned)
    {
        _options.Probes[0].OffsetKelvin = ownerK;
        var page = Page(
            [new KeptProbe("flow", SomeSight.Flow, learntK)], new SeenProbe(SomeSight.Flow, Reading.Of(20)));
        Assert.Equal(isWarned, page.Any(line => line.Contains("has an offset of", StringComparison.Ordinal)));
    }

    [Fact]
    public void BusThatDoesNotAnswer_IsSaidAndNoProbeIsBlamed()
    {
        var page = ProbesPage.Lines(BusSight.Of(_options, [], null)).ToList();
        Assert.Equal("the 1-Wire bus does not answer", page[0]);
        Assert.DoesNotContain(page, line => line.StartsWith('!'));
    }

    private List<string> Page(IReadOnlyList<KeptProbe> kept, params SeenProbe[] seen) =>
        [.. ProbesPage.Lines(BusSight.Of(_options, kept, seen))];
}
