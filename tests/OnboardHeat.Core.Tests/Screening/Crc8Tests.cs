using System.Text;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Tests.Screening;

public sealed class Crc8Tests
{
    // The probe maker's application note 27, worked ROM example, bytes in the order of the wire.
    [Fact]
    public void WorkedRomExample_GivesA2()
    {
        byte[] rom = [0x02, 0x1C, 0xB8, 0x01, 0x00, 0x00, 0x00];
        Assert.Equal(0xA2, Crc8.Of(rom));
        Assert.Equal(0, Crc8.Of([.. rom, 0xA2]));
    }

    // Catalogue of checksum algorithms, CRC-8/MAXIM-DOW: check value over the nine digits.
    [Fact]
    public void CatalogueCheckValue_IsA1() => Assert.Equal(0xA1, Crc8.Of(Encoding.ASCII.GetBytes("123456789")));

    // A ROM as a public forum quotes it with its Linux name 28-c016821e64ff; the checksum was run with an independent
    // table.
    [Fact]
    public void RomOfAProbe_GivesCA() => Assert.Equal(0xCA, Crc8.Of([0x28, 0xFF, 0x64, 0x1E, 0x82, 0x16, 0xC0]));

    // First row of application note 27's table: the checksum of one byte is its entry.
    [Fact]
    public void FirstSixteenEntries_MatchThePublishedTable()
    {
        byte[] published = [0, 94, 188, 226, 97, 63, 221, 131, 194, 156, 126, 32, 163, 253, 31, 65];
        for (var i = 0; i < published.Length; i++)
        {
            Assert.Equal(published[i], Crc8.Of([(byte)i]));
        }
    }
}
