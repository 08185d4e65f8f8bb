using CsCheck;
using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Messaging.Link;
using OnboardHeat.Messaging.Supervision;

namespace OnboardHeat.Adapters.Tests.Messaging;

public sealed class SupervisionTests
{
    [Fact]
    public void Waits_DoubleToAMinute_AndOnlyAConnectionThatHeldBeginsAnew()
    {
        const int Seed = 7;
        var backoff = new Backoff(new Random(Seed));
        var waits = Enumerable.Range(0, 10).Select(_ => backoff.Next(TimeSpan.Zero).TotalSeconds).ToList();

        Assert.All(waits.Index(), w => Assert.InRange(
            w.Item, Math.Min(60, Math.Pow(2, w.Index)) / 2, Math.Min(60, Math.Pow(2, w.Index))));
        Assert.True(waits.Distinct().Count() == 10, $"no jitter with seed {Seed}");
        Assert.InRange(backoff.Next(TimeSpan.FromSeconds(59)).TotalSeconds, 30, 60);
        Assert.InRange(backoff.Next(TimeSpan.FromSeconds(60)).TotalSeconds, 0.5, 1);
    }

    [Theory]
    [InlineData(3600, 3600)]
    [InlineData(-3600, -3600)]
    [InlineData(4, 0)]
    public void ClockThatIsSet_IsNoticedOnce(int setByS, int noticedS)
    {
        var time = new SettableClock();
        var clock = new ClockStep(time);
        time.Advance(TimeSpan.FromMinutes(10));
        Assert.Equal(TimeSpan.Zero, clock.Look());

        time.SetBy = TimeSpan.FromSeconds(setByS);

        Assert.Equal(noticedS, clock.Look().TotalSeconds, 3);
        Assert.Equal(TimeSpan.Zero, clock.Look());
    }

    [Fact]
    public void SameReasonForADay_IsSaidOnceAnHour()
    {
        var time = new FakeTimeProvider();
        var log = new LineLog();
        var outage = new Outage("camp:1883", "onboardheat/van/", time, log);
        for (var minute = 0; minute < 24 * 60; minute++)
        {
            outage.Failed("Connection refused");
            time.Advance(TimeSpan.FromMinutes(1));
        }

        outage.Over();

        Assert.Equal(1 + 23 + 1, log.Lines.Count);
        Assert.Contains("connected again after 1440 tries in 1440.0 min", log.Lines.Last());
    }

    [Fact]
    public void Gauge_SeesThePacketThatIsTooLarge_HoweverTheStreamIsCut() =>
        // CsCheck prints its seed when this fails and takes it back through CsCheck_Seed.
        Gen.Select(Gen.Int[0, 3000].Array[0, 8], Gen.Int[1, 500]).Sample(given =>
        {
            var (lengths, cut) = given;
            var stream = lengths.Append(5000).SelectMany(Packet).ToArray();
            var gauge = new PacketGauge();
            var found = stream.Chunk(cut).Select(chunk => gauge.Observe(chunk, 4000))
                .Where(bytes => bytes is not null).ToList();
            return found.Count == 1 && found[0] == 5000;
        });

    // A packet of that remaining length, coded as MQTT 5.0, section 1.5.5 gives the algorithm.
    private static IEnumerable<byte> Packet(int length)
    {
        yield return 0x30;
        var left = length;
        do
        {
            var digit = left % 128;
            left /= 128;
            yield return (byte)(left > 0 ? digit | 0x80 : digit);
        }
        while (left > 0);

        for (var i = 0; i < length; i++)
        {
            yield return 0xFF;
        }
    }
}
