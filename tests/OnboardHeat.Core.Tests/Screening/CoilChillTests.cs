using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Screening;

/// <summary>The engine starts cold beside a mixed tank: for some minutes its coolant chills the coil.</summary>
public sealed class CoilChillTests
{
    private const Channel Top = Channel.TankTop;
    private const Channel Bottom = Channel.TankBottom;

    private readonly ScreenBench _bench = new(Top, Bottom, Channel.Flow, Channel.Return) { Engine = true };

    [Fact]
    public void TopFallsAndBottomStands_AreExchanged()
    {
        var screened = Chill(topFallsKPerMin: 0.4, bottomFallsKPerMin: 0);

        Assert.Equal((ReadingFault.Swapped, ReadingFault.Swapped), (screened[Top].Fault, screened[Bottom].Fault));
    }

    [Fact]
    public void ExchangedProbes_StayToldWhenTheTankIsMixedAgain()
    {
        Chill(topFallsKPerMin: 0.4, bottomFallsKPerMin: 0);

        ScreenedScan? screened = null;
        for (var heated = 0.0; heated < 1; heated += 0.01)
        {
            screened = Take(48 + (4 * heated), 50.2 + (1.8 * heated), 25 + (50 * heated), 30 + (40 * heated));
        }

        Assert.Equal(ReadingFault.Swapped, screened![Top].Fault);
    }

    [Fact]
    public void BottomFallsAndTopStands_IsTheRightOrder() =>
        Assert.True(Chill(topFallsKPerMin: 0, bottomFallsKPerMin: 0.4)[Top].IsGood);

    /// <summary>A tank that cools as a whole says nothing of the order.</summary>
    [Fact]
    public void BothFall_SaysNothing() =>
        Assert.True(Chill(topFallsKPerMin: 0.4, bottomFallsKPerMin: 0.3)[Top].IsGood);

    /// <summary>The top falls while hot coolant passes: whatever that is, it is not the coil.</summary>
    [Fact]
    public void TopFallsBesideHotCoolant_SaysNothing() =>
        Assert.True(Chill(topFallsKPerMin: 0.4, bottomFallsKPerMin: 0, coolantCelsius: 80)[Top].IsGood);

    private ScreenedScan Chill(double topFallsKPerMin, double bottomFallsKPerMin, double coolantCelsius = 25)
    {
        ScreenedScan? last = null;
        for (var min = 0.0; min < 5; min += _bench.PeriodS / 60)
        {
            last = Take(
                50 - (topFallsKPerMin * min), 50.2 - (bottomFallsKPerMin * min), coolantCelsius, coolantCelsius + 5);
        }

        return last!;
    }

    private ScreenedScan Take(double top, double bottom, double flow, double back) =>
        _bench.Take((Top, top), (Bottom, bottom), (Channel.Flow, flow), (Channel.Return, back));
}
