using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Reads the nine bytes of a DS18B20 and names what is wrong with them. A checksum that fits does not prove a
/// temperature: a bus held low gives nine zeros, a probe that lost its supply gives 85 °C, and both carry a valid
/// checksum. (Register table and byte layout: the probe's data sheet; power-on by byte 6: the Linux w1_therm attribute
/// <c>features</c>.)
/// </summary>
public static class Ds18b20Scratchpad
{
    /// <summary>Number of bytes in a scratchpad, its checksum included.</summary>
    public const int Length = 9;

    private const int ConfigurationByte = 4;
    private const int CountRemainByte = 6;

    // What byte 6 holds between power-up and the end of the first conversion.
    private const byte CountRemainAtPowerOn = 0x0C;

    // 85 °C in sixteenths: the register's value before the first conversion.
    private const short PowerOnRaw = 0x0550;

    // 127.9375 °C: what a conversion leaves behind that had too little current.
    private const short StarvedRaw = 0x07FF;

    private const double CelsiusPerStep = 1.0 / 16;

    /// <summary>
    /// A temperature in degrees Celsius without any offset, or the fault: <see cref="ReadingFault.AllZero"/>, <see
    /// cref="ReadingFault.BadCrc"/>, <see cref="ReadingFault.PowerOn"/>, <see cref="ReadingFault.OutOfRange"/>, and
    /// <see cref="ReadingFault.Missing"/> when nobody pulled the bus low (nine times FF) or the bytes are not nine.
    /// </summary>
    public static Reading Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length != Length || bytes.IndexOfAnyExcept((byte)0xFF) < 0)
        {
            return Reading.Failed(ReadingFault.Missing);
        }

        if (bytes.IndexOfAnyExcept((byte)0) < 0)
        {
            return Reading.Failed(ReadingFault.AllZero);
        }

        // A configuration byte that no DS18B20 can hold is a damaged transfer even where the checksum happens to fit.
        if (Crc8.Of(bytes) != 0 || ResolutionMask(bytes[ConfigurationByte]) is not { } mask)
        {
            return Reading.Failed(ReadingFault.BadCrc);
        }

        var raw = (short)(bytes[0] | (bytes[1] << 8));
        if (raw == StarvedRaw || (raw == PowerOnRaw && bytes[CountRemainByte] == CountRemainAtPowerOn))
        {
            return Reading.Failed(ReadingFault.PowerOn);
        }

        var celsius = (short)(raw & mask) * CelsiusPerStep;
        return celsius is < ScreeningPolicy.ProbeLowestCelsius or > ScreeningPolicy.ProbeHighestCelsius
            ? Reading.Failed(ReadingFault.OutOfRange)
            : Reading.Of(celsius);
    }

    // Below 12 bits the lowest bits of the register are undefined and have to go.
    private static short? ResolutionMask(byte configuration) => configuration switch
    {
        0x1F => unchecked((short)0xFFF8),
        0x3F => unchecked((short)0xFFFC),
        0x5F => unchecked((short)0xFFFE),
        0x7F => unchecked((short)0xFFFF),
        _ => null,
    };
}
