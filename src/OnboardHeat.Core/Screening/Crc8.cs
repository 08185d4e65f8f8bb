namespace OnboardHeat.Core.Screening;

/// <summary>
/// The 1-Wire checksum: CRC-8 over X8 + X5 + X4 + 1, fed with the least significant bit first, from zero (catalogued as
/// CRC-8/MAXIM-DOW; worked example in the probe maker's application note 27). Over bytes followed by their own checksum
/// it gives zero.
/// </summary>
internal static class Crc8
{
    // Polynomial 31h with its bits in the order of the wire.
    private const byte Polynomial = 0x8C;

    private static readonly byte[] s_table = MakeTable();

    /// <summary>The checksum over the bytes in the order of the wire.</summary>
    public static byte Of(ReadOnlySpan<byte> bytes)
    {
        byte crc = 0;
        foreach (var value in bytes)
        {
            crc = s_table[crc ^ value];
        }

        return crc;
    }

    private static byte[] MakeTable()
    {
        var table = new byte[256];
        for (var i = 0; i < table.Length; i++)
        {
            var crc = i;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ Polynomial : crc >> 1;
            }

            table[i] = (byte)crc;
        }

        return table;
    }
}
