using OnboardHeat.Core.Screening;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>
/// The real library over a fabricated tree keeps the contract, and what only files can do is named too.
/// </summary>
public sealed class KernelBusTests : ProbeBusContract, IDisposable
{
    private readonly FabricatedTree _tree = new();
    private readonly IProbeBus _bus;

    public KernelBusTests() => _bus = KernelBuses.Of(_tree.Name);

    private protected override IProbeBus Bus => _bus;

    public void Dispose() => _tree.Dispose();

    protected override void Plug(string rom, string kernelText) => _tree.Plug(rom, kernelText);

    protected override void Unplug(string rom) => _tree.Unplug(rom);

    [Fact]
    public void BusGone_IsAnEmptyListAndMissingReadings()
    {
        _tree.Vanish();
        Assert.Empty(_bus.ListRoms());
        Assert.Equal(ReadingFault.Missing, _bus.Read(Rom).Fault);
        Assert.False(_bus.TryMeasureAll());
    }

    [Fact]
    public void BusThatAppearsLater_IsRead()
    {
        _tree.Vanish();
        Assert.Equal(ReadingFault.Missing, _bus.Read(Rom).Fault);
        _tree.Appear();
        _tree.Plug(Rom, KernelTexts.Sound);
        Assert.Equal(23.125, _bus.Read(Rom).Value, 1e-9);
    }

    [Fact]
    public void BlankSlavesLine_ListsTheOthers()
    {
        _tree.Plug(Rom, KernelTexts.Sound);
        File.WriteAllText(Path.Combine(_tree.Bus, "w1_master_slaves"), "\n\n" + Rom + "\n");
        Assert.Equal([Rom], _bus.ListRoms());
    }

    [Fact]
    public void BulkTrigger_IsExactlyEightBytes()
    {
        _tree.AllowBulk();
        Assert.True(_bus.TryMeasureAll());
        // Kernel documentation of w1_therm: "trigger" starts the conversion; the driver compares the line with its
        // newline.
        Assert.StartsWith("trigger\n", File.ReadAllText(_tree.BulkFile), StringComparison.Ordinal);
    }

    [Fact]
    public void NoBulkFile_IsNotMadeByUs()
    {
        Assert.False(_bus.TryMeasureAll());
        Assert.False(File.Exists(_tree.BulkFile));
    }
}
