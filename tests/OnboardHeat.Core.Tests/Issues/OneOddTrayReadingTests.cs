using OnboardHeat.Core.Tests.Circuit;

namespace OnboardHeat.Core.Tests.Issues;

/// <summary>
/// One reading of the tray's probe that jumped by 19.5 K was told as coolant leaving: the rise within a minute was
/// taken from the newest reading alone. It must have lasted.
/// </summary>
public sealed class OneOddTrayReadingTests
{
    /// <summary>A quick rise alone is given at most so much, nats; only a lasting one may decide by itself.</summary>
    private const double QuickRiseAtMostNats = 6.5;

    [Fact]
    public void TrayJumps19KForOneReading_IsNoLastingRise()
    {
        var van = new CircuitBench().WarmedUp();
        van.TrayJumpK = 19.5;
        van.Run(2);
        Assert.DoesNotContain(
            van.Bench.Last!.Circuit.Evidence, e => e.Sign == "tray-rise" && e.StoppedNats > QuickRiseAtMostNats);
    }

    [Fact]
    public void TrayJumps19KAndThenGivesNothing_IsNoLastingRise()
    {
        var van = new CircuitBench().WarmedUp();
        van.TrayJumpK = 19.5;
        van.Run(2);
        van.IsTrayGone = true;
        for (var i = 0; i < 15; i++)
        {
            van.Run(2);
            Assert.DoesNotContain(
                van.Bench.Last!.Circuit.Evidence, e => e.Sign == "tray-rise" && e.StoppedNats > QuickRiseAtMostNats);
        }
    }

    [Fact]
    public void TrayStays19KWarmer_IsALastingRise()
    {
        var van = new CircuitBench().WarmedUp();
        van.TrayJumpK = 19.5;
        van.Run(20);
        Assert.Contains(
            van.Bench.Last!.Circuit.Evidence, e => e.Sign == "tray-rise" && e.StoppedNats > QuickRiseAtMostNats);
    }
}
