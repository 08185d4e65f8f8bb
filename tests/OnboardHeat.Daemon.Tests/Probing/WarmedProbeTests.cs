using OnboardHeat.Daemon.Probing;

namespace OnboardHeat.Daemon.Tests.Probing;

public sealed class WarmedProbeTests
{
    private readonly WarmedProbe _warmed = new();

    [Fact]
    public void OneThatRisesByAKelvin_IsNamedOnce()
    {
        Assert.Null(_warmed.Observe(SomeSight.Of(20, 20)));
        Assert.Null(_warmed.Observe(SomeSight.Of(20.9375, 20.0625)));
        Assert.Equal(SomeSight.Flow, _warmed.Observe(SomeSight.Of(21, 20.0625))?.Rom);
        Assert.Null(_warmed.Observe(SomeSight.Of(24, 20.0625)));
    }

    [Fact]
    public void AllThatRiseTogether_AreNoHand()
    {
        for (var i = 0; i < 40; i++)
        {
            Assert.Null(_warmed.Observe(SomeSight.Of(20 + (0.2 * i), 20 + (0.18 * i), 20 + (0.1 * i))));
        }
    }

    [Fact]
    public void TheNext_IsNamedWhileTheFirstCools()
    {
        _warmed.Observe(SomeSight.Of(20, 20));
        Assert.Equal(SomeSight.Flow, _warmed.Observe(SomeSight.Of(25, 20))?.Rom);
        Assert.Null(_warmed.Observe(SomeSight.Of(24, 20)));
        Assert.Equal(SomeSight.Stranger, _warmed.Observe(SomeSight.Of(22, 20, 22))?.Rom);
        Assert.Equal(2, _warmed.Named);
    }

    [Fact]
    public void OneWithoutAReading_IsNotNamedWhenItComesBack()
    {
        _warmed.Observe(SomeSight.Of(null, 20));
        Assert.Null(_warmed.Observe(SomeSight.Of(30, 20)));
    }
}
