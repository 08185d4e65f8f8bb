namespace OnboardHeat.Adapters.Tests.Probes;

/// <summary>What the kernel's w1_slave file says, in the form its own documentation (w1_therm) shows.</summary>
internal static class KernelTexts
{
    /// <summary>
    /// 23.125 °C: byte 0x0172 / 16 (the DS18B20 data sheet's scale of 1/16 K), checksum as kernel logs show it.
    /// </summary>
    public const string Sound = "72 01 4b 46 7f ff 0e 10 57 : crc=57 YES\n72 01 4b 46 7f ff 0e 10 57 t=23125\n";

    /// <summary>The value after power-on: 0x0550 with byte 6 at 0x0C (data sheet, memory map after power-up).</summary>
    public const string PowerOn = "50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n50 05 4b 46 7f ff 0c 10 1c t=85000\n";

    /// <summary>The bus held low: nine zero bytes, whose checksum is zero and fits.</summary>
    public const string AllZero = "00 00 00 00 00 00 00 00 00 : crc=00 YES\n00 00 00 00 00 00 00 00 00 t=0\n";

    /// <summary>A bit lost on the way.</summary>
    public const string BadCrc = "72 01 4b 46 7f ff 0e 10 56 : crc=57 NO\n72 01 4b 46 7f ff 0e 10 57 t=23125\n";

    /// <summary>Any failed read.</summary>
    public const string Empty = "";

    /// <summary>Something that is no scratchpad at all.</summary>
    public const string Garbled = "\0\0\u00ff\n";

    /// <summary>
    /// A sound scratchpad of any temperature on the probe's grid of 1/16 K, with the checksum of the data sheet
    /// (X8+X5+X4+1).
    /// </summary>
    public static string Of(double celsius, byte countRemain = 0x10)
    {
        var raw = (short)Math.Round(celsius * 16);
        Span<byte> bytes = [(byte)raw, (byte)(raw >> 8), 0x4b, 0x46, 0x7f, 0xff, countRemain, 0x10, 0];
        bytes[8] = Crc(bytes[..8]);
        var hex = string.Join(
            ' ', bytes.ToArray().Select(b => b.ToString("x2", System.Globalization.CultureInfo.InvariantCulture)));
        return FormattableString.Invariant($"{hex} : crc={bytes[8]:x2} YES\n{hex} t={raw * 1000 / 16}\n");
    }

    private static byte Crc(ReadOnlySpan<byte> bytes)
    {
        byte crc = 0;
        foreach (var value in bytes)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (byte)((crc & 1) == 1 ? (crc >> 1) ^ 0x8c : crc >> 1);
            }
        }

        return crc;
    }
}
