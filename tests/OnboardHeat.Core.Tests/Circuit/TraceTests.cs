using OnboardHeat.Core.Circuit;

namespace OnboardHeat.Core.Tests.Circuit;

/// <summary>Slopes against the closed form of a straight line; steps are irregular on purpose.</summary>
public sealed class TraceTests
{
    [Fact]
    public void IrregularSteps_GiveTheSlopeOfTheLine()
    {
        var trace = Line(0.05, 40, 1, 3, 2, 7);
        Assert.True(trace.TrySlope(trace.NewestS - 60, trace.NewestS, out var slope));
        Assert.Equal(0.05, slope.KPerS, 9);
    }

    [Fact]
    public void Gap_LeavesTheWindowUncovered()
    {
        var trace = Line(0.05, 40, 2);
        trace.Add(trace.NewestS + 300, 50);
        Assert.False(trace.TrySlope(trace.NewestS - 60, trace.NewestS, out _));
    }

    [Fact]
    public void OldReadings_AreOverwritten_AndTheRangeKnowsOnlyTheWindow()
    {
        var trace = Line(0.05, 2000, 1);
        Assert.True(trace.TryRange(trace.NewestS - 100, trace.NewestS, out var lowest, out var highest));
        Assert.Equal(5, highest - lowest, 6);
        Assert.Equal(trace.Newest, highest, 9);
    }

    [Fact]
    public void FasterThanItsSpacing_ReadingsAreLeftOut_SoTheMemoryIsNotShortened()
    {
        var trace = Line(0.05, 3000, 0.1);
        Assert.True(trace.TrySlope(trace.NewestS - 250, trace.NewestS, out var slope));
        Assert.True(slope.SpanS > 240);
    }

    private static Trace Line(double kPerS, int count, params double[] stepsS)
    {
        var trace = new Trace();
        var atS = 0.0;
        for (var i = 0; i < count; i++)
        {
            trace.Add(atS, 20 + (kPerS * atS));
            atS += stepsS[i % stepsS.Length];
        }

        return trace;
    }
}
