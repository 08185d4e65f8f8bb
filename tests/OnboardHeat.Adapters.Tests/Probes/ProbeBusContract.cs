using OnboardHeat.Core.Screening;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>What every bus must do, be it the kernel's through the real library or the tests' own.</summary>
public abstract class ProbeBusContract
{
    protected const string Rom = "28-0316a279ddff";
    protected const string OtherRom = "28-0000055f311a";

    private protected abstract IProbeBus Bus { get; }

    /// <summary>Hangs a probe on the bus, or changes what it gives, as the kernel would show it.</summary>
    protected abstract void Plug(string rom, string kernelText);

    protected abstract void Unplug(string rom);

    [Fact]
    public void SoundProbe_IsReadToASixteenth()
    {
        Plug(Rom, KernelTexts.Sound);
        Assert.Equal(23.125, Bus.Read(Rom).Value, 1e-9);
        Assert.Equal(ReadingFault.None, Bus.Read(Rom).Fault);
    }

    [Theory]
    [InlineData(-10.125)]
    [InlineData(-0.0625)]
    [InlineData(0.0625)]
    [InlineData(85)]
    [InlineData(85.0625)]
    [InlineData(110)]
    [InlineData(125)]
    public void TrueTemperature_IsTakenAsRead(double celsius)
    {
        Plug(Rom, KernelTexts.Of(celsius));
        var reading = Bus.Read(Rom);
        Assert.Equal(ReadingFault.None, reading.Fault);
        Assert.Equal(celsius, reading.Value, 1e-3);
    }

    [Theory]
    [InlineData(KernelTexts.PowerOn, ReadingFault.PowerOn)]
    [InlineData(KernelTexts.AllZero, ReadingFault.AllZero)]
    [InlineData(KernelTexts.BadCrc, ReadingFault.BadCrc)]
    [InlineData(KernelTexts.Empty, ReadingFault.Missing)]
    [InlineData(KernelTexts.Garbled, ReadingFault.Missing)]
    public void BadText_IsANamedFault(string kernelText, ReadingFault fault)
    {
        Plug(Rom, kernelText);
        Assert.Equal(fault, Bus.Read(Rom).Fault);
    }

    [Fact]
    public void ProbeNeverSeen_IsMissing() => Assert.Equal(ReadingFault.Missing, Bus.Read(OtherRom).Fault);

    [Fact]
    public void ProbeUnpluggedAndBack_IsMissingThenRead()
    {
        Plug(Rom, KernelTexts.Sound);
        Plug(OtherRom, KernelTexts.Sound);
        Unplug(Rom);
        Assert.Equal(ReadingFault.Missing, Bus.Read(Rom).Fault);
        Assert.Equal([OtherRom], Bus.ListRoms());
        Plug(Rom, KernelTexts.Sound);
        Assert.Equal(ReadingFault.None, Bus.Read(Rom).Fault);
        Assert.Equal([OtherRom, Rom], Bus.ListRoms().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void EmptyBus_ListsNothing() => Assert.Empty(Bus.ListRoms());

    [Theory]
    [InlineData("")]
    [InlineData("28-")]
    [InlineData("../../etc/pas")]
    [InlineData("28-0316a279dd/f")]
    public void WhatIsNoAddress_IsMissing(string rom) => Assert.Equal(ReadingFault.Missing, Bus.Read(rom).Fault);
}
