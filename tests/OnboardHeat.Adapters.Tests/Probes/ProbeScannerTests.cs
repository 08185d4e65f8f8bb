using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

public sealed class ProbeScannerTests : IDisposable
{
    private const string Flow = "28-0000000a1c03";
    private const string Return = "28-0000000a1c04";

    private readonly FakeTimeProvider _time = new();
    private readonly FakeBus _bus = new();
    private readonly ProbeScanner _scanner;

    public ProbeScannerTests()
    {
        _bus.Set(Flow, Reading.Of(80.0625));
        _bus.Set(Return, Reading.Of(71));
        _scanner = new ProbeScanner(
            _bus, [new ProbeFitting(Channel.Flow, Flow, 0.25), new ProbeFitting(Channel.Return, Return, 0)], _time);
    }

    public void Dispose()
    {
        _bus.Release(Flow);
        _scanner.Dispose();
    }

    [Fact]
    public async Task Readings_ComeToTheirChannelsWithTheOffsetAdded()
    {
        var scan = await ScanAsync();
        Assert.Equal((80.3125, 71.0), (scan[Channel.Flow].Value, scan[Channel.Return].Value));
        Assert.Equal(ReadingFault.Missing, scan[Channel.Tray].Fault);
    }

    [Fact]
    public async Task NewOffset_IsInForceFromTheNextScan()
    {
        await ScanAsync();
        _scanner.SetOffset(Channel.Return, -0.5);
        Assert.Equal(70.5, (await ScanAsync())[Channel.Return].Value);
    }

    [Fact]
    public async Task ProbeThatHangs_IsMissingAndHoldsUpNoOther()
    {
        _bus.Hang(Flow);
        var scan = await ScanAsync();
        Assert.Equal(ReadingFault.Missing, scan[Channel.Flow].Fault);
        Assert.Equal(71, scan[Channel.Return].Value);
    }

    [Fact]
    public async Task ProbeThatAnswersAgain_IsReadAgain()
    {
        _bus.Hang(Flow);
        await ScanAsync();
        _bus.Release(Flow);
        while (!(await ScanAsync())[Channel.Flow].HasValue)
        {
            await Task.Yield();
        }

        Assert.Equal(80.3125, (await ScanAsync())[Channel.Flow].Value);
    }

    [Fact]
    public async Task NamedFault_IsPassedOnWithoutAnOffset()
    {
        _bus.Set(Flow, Reading.Failed(ReadingFault.BadCrc));
        Assert.Equal(Reading.Failed(ReadingFault.BadCrc), (await ScanAsync())[Channel.Flow]);
    }

    [Fact]
    public async Task BusThatCanMeasureAllAtOnce_IsTriggeredBeforeEachScan()
    {
        _bus.CanMeasureAll = true;
        await ScanAsync();
        await ScanAsync();
        Assert.Equal(2, _bus.Measured);
    }

    [Fact]
    public async Task BusThatCannot_IsAskedAgainAfterTenMinutes()
    {
        await ScanAsync();
        await ScanAsync();
        Assert.Equal(1, _bus.Measured);
        _time.Advance(ProbeScanner.BulkRetryEvery);
        await ScanAsync();
        Assert.Equal(2, _bus.Measured);
    }

    [Fact]
    public async Task AllProbes_AreReadAtTheSameTime()
    {
        // Each read comes back only when all have begun: read one after the other, none would come back in time.
        using var begun = new CountdownEvent(8);
        var bus = new GatheringBus(begun);
        ProbeFitting[] fitted =
            [.. Channels.All.ToArray().Take(8)
                .Select(channel => new ProbeFitting(channel, $"28-{(int)channel:x12}", 0))];
        using var scanner = new ProbeScanner(bus, fitted, TimeProvider.System);
        var scan = new Scan();
        await scanner.ReadAsync(scan);
        Assert.All(fitted, probe => Assert.Equal(20, scan[probe.Channel].Value));
    }

    private async Task<Scan> ScanAsync()
    {
        var scan = new Scan();
        var reading = _scanner.ReadAsync(scan);
        while (!reading.IsCompleted)
        {
            // Slow steps: a thread that is about to answer must not be overtaken by the test's clock.
            await Task.WhenAny(reading, Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System));
            if (!reading.IsCompleted && _bus.IsHung)
            {
                _time.Advance(TimeSpan.FromSeconds(0.5));
            }
        }

        await reading;
        return scan;
    }

    private sealed class GatheringBus(CountdownEvent begun) : IProbeBus
    {
        public IReadOnlyList<string> ListRoms() => [];

        public bool TryMeasureAll() => false;

        public Reading Read(string rom)
        {
            begun.Signal();
            begun.Wait();
            return Reading.Of(20);
        }
    }
}
