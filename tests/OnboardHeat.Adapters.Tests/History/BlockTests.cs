using OnboardHeat.Core.Scans;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.Adapters.Tests.History;

public sealed class BlockTests
{
    [Fact]
    public void Crc32COfTheStandardsExample_IsTheStandardsValue()
    {
        // RFC 3720, appendix B.4: 32 bytes of zeros give AA 36 91 8A (sent lowest byte first); 32 of ones give 43 AB A8
        // 62.
        Assert.Equal(0x8A9136AAu, Block.Crc32C(new byte[32]));
        Assert.Equal(0x62A8AB43u, Block.Crc32C(Enumerable.Repeat((byte)0xFF, 32).ToArray()));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void AnyScans_ComeBackToTheLastBit(int seed)
    {
        var some = new SomeScans(seed);
        var scans = Enumerable.Range(0, 300)
            .Select(i => some.Odd(7, TimeSpan.FromTicks((i * 20_000_000L) + (seed == 1 ? 0 : i % 7)))).ToArray();
        var header =
            new BlockHeader(BlockKind.Scans, 7, 5, 5, scans[0].Elapsed, scans[^1].Elapsed, scans.Length, 0, default);

        Assert.True(Block.TryOpen(Block.Seal(header, ScanCodec.Encode(scans)), out var read, out var payload));
        var back = ScanCodec.Decode(read, payload.Span);

        Assert.Equal(header, read);
        Assert.All(scans.Zip(back), pair => Assert.Equal("", ScanCompare.Difference(pair.First, pair.Second)));
    }

    [Fact]
    public void AnyFlippedBit_IsNoticed()
    {
        var scans = new SomeScans(4).Drive(1, 30).ToArray();
        var header =
            new BlockHeader(BlockKind.Scans, 1, 1, 1, scans[0].Elapsed, scans[^1].Elapsed, scans.Length, 0, default);
        var stored = Block.Seal(header, ScanCodec.Encode(scans));
        for (var bit = 0; bit < stored.Length * 8; bit++)
        {
            stored[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.False(Block.TryOpen(stored, out _, out _), $"bit {bit}");
            stored[bit / 8] ^= (byte)(1 << (bit % 8));
        }
    }

    [Fact]
    public void AnHourOfRealisticReadings_TakesUnderOneByteEach()
    {
        var scans = new SomeScans(5).Drive(1, 1800).ToArray();

        var bytes = ScanCodec.Encode(scans).Length;

        // The issue asks for 0.8 bytes a reading packed, on disk; the payload alone must leave room for the engine's
        // pages.
        Assert.InRange(bytes / (1800.0 * 6), 0.05, 0.75);
    }
}
