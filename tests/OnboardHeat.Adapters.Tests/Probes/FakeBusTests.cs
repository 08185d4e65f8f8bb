using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>The tests' own bus keeps the contract.</summary>
public sealed class FakeBusTests : ProbeBusContract
{
    private readonly FakeBus _bus = new();

    private protected override IProbeBus Bus => _bus;

    protected override void Plug(string rom, string kernelText)
    {
        Span<byte> bytes = stackalloc byte[Ds18b20Scratchpad.Length];
        _bus.Set(rom, ScratchpadText.TryParse(kernelText, bytes) ? Ds18b20Scratchpad.Decode(bytes) : Reading.Failed(
            ReadingFault.Missing));
    }

    protected override void Unplug(string rom) => _bus.Unplug(rom);
}
