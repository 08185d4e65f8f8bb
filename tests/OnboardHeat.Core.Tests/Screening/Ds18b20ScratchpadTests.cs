using CsCheck;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tests.Screening;

public sealed class Ds18b20ScratchpadTests
{
    // Data sheet, table of temperature and register (12 bits); -55 °C to +125 °C.
    [Theory]
    [InlineData(0x07D0, 125.0)]
    [InlineData(0x0191, 25.0625)]
    [InlineData(0x00A2, 10.125)]
    [InlineData(0x0008, 0.5)]
    [InlineData(0x0000, 0.0)]
    [InlineData(0xFFF8, -0.5)]
    [InlineData(0xFF5E, -10.125)]
    [InlineData(0xFE6F, -25.0625)]
    [InlineData(0xFC90, -55.0)]
    public void RegisterOfTheDataSheet_DecodesToItsTemperature(int register, double celsius)
    {
        var reading = Ds18b20Scratchpad.Decode(Bytes(register, config: 0x7F, countRemain: 0x10));
        Assert.Equal(ReadingFault.None, reading.Fault);
        Assert.Equal(celsius, reading.Value);
    }

    // Whole scratchpads whose checksums were run with an independent table: the last byte is not of our making.
    [Theory]
    [InlineData("91014B467FFF0C1070", 25.0625, ReadingFault.None)]
    [InlineData("A2004B467FFF0C1074", 10.125, ReadingFault.None)]
    [InlineData("5EFF4B467FFF0C106A", -10.125, ReadingFault.None)]
    [InlineData("D0074B467FFF0C10F4", 125, ReadingFault.None)]
    [InlineData("90FC4B467FFF0C104F", -55, ReadingFault.None)]
    [InlineData("50054B467FFF0C101C", 0, ReadingFault.PowerOn)]
    [InlineData("FF074B467FFF0C10A6", 0, ReadingFault.PowerOn)]
    [InlineData("000000000000000000", 0, ReadingFault.AllZero)]
    [InlineData("FFFFFFFFFFFFFFFFFF", 0, ReadingFault.Missing)]
    [InlineData("91014B467FFF0C1071", 0, ReadingFault.BadCrc)]
    [InlineData("91014B467FFF0C10", 0, ReadingFault.Missing)]
    [InlineData("", 0, ReadingFault.Missing)]
    public void Scratchpad_GivesItsTemperatureOrItsFault(string hex, double celsius, ReadingFault fault)
    {
        var reading = Ds18b20Scratchpad.Decode(Convert.FromHexString(hex));
        Assert.Equal(fault, reading.Fault);
        Assert.Equal(fault == ReadingFault.None ? celsius : 0, reading.Value);
    }

    // Linux kernel, w1_therm attribute 'features': 85.00 counts as power-on only with byte 6 at 0Ch.
    [Fact]
    public void Genuine85_WithAnotherByte6_IsBelieved() =>
        Assert.Equal(85.0, Ds18b20Scratchpad.Decode(Bytes(0x0550, config: 0x7F, countRemain: 0x04)).Value);

    // Data sheet: at 9, 10 and 11 bits the lowest 3, 2 and 1 bits are undefined. FF here, so that a missing mask shows.
    [Theory]
    [InlineData(0x1F, 25.0)]
    [InlineData(0x3F, 25.25)]
    [InlineData(0x5F, 25.375)]
    [InlineData(0x7F, 25.4375)]
    public void UndefinedLowBits_AreMasked(byte config, double celsius) =>
        Assert.Equal(celsius, Ds18b20Scratchpad.Decode(Bytes(0x0197, config, countRemain: 0x10)).Value);

    [Theory]
    [InlineData(0x00)]
    [InlineData(0xFF)]
    [InlineData(0x60)]
    public void ConfigurationThatNoProbeHas_IsDamage(byte config) =>
        Assert.Equal(ReadingFault.BadCrc, Ds18b20Scratchpad.Decode(Bytes(0x0191, config, countRemain: 0x10)).Fault);

    [Theory]
    [InlineData(0x0800)]
    [InlineData(0xFC80)]
    [InlineData(0x7FFF)]
    public void BeyondTheProbesRange_IsOutOfRange(int register) =>
        Assert.Equal(
            ReadingFault.OutOfRange, Ds18b20Scratchpad.Decode(Bytes(register, config: 0x7F, countRemain: 0x10)).Fault);

    [Fact]
    public void AnyBytes_GiveAFiniteTemperatureInRangeOrANamedFault() =>
        Gen.Byte.Array[0, 12].Sample(
            bytes =>
            {
                var reading = Ds18b20Scratchpad.Decode(bytes);
                return reading.Fault == ReadingFault.None ? reading.Value is >= -55 and <= 125 : reading.Value == 0;
            },
            iter: 20_000,
            seed: "0000KMf9qpz5");

    private static byte[] Bytes(int register, byte config, byte countRemain)
    {
        byte[] bytes = [(byte)register, (byte)(register >> 8), 0x4B, 0x46, config, 0xFF, countRemain, 0x10];
        return [.. bytes, Crc8.Of(bytes)];
    }
}
