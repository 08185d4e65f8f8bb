using CsCheck;
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

    /// <summary>
    /// Any window of any history, rings gone round several times included, against looking at every reading.
    /// </summary>
    [Fact]
    public void RangeOfAnyWindow_IsThatOfItsReadings() =>
        Gen.Select(Gen.Double[1, 9].Array[1, 1200], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((steps, from, until) =>
        {
            var trace = new Trace();
            var kept = new List<(double S, double Celsius)>();
            var nowS = 0.0;
            foreach (var step in steps)
            {
                nowS += step;
                kept.Add((nowS, 40 + (30 * Math.Sin(nowS * step))));
                trace.Add(kept[^1].S, kept[^1].Celsius);
            }

            kept = [.. kept.TakeLast(Trace.Capacity)];
            var (fromS, untilS) = (from * nowS, Math.Max(from, until) * nowS);
            var inside = kept.Where(r => r.S >= fromS && r.S <= untilS).Select(r => r.Celsius).ToList();
            Assert.Equal(inside.Count > 0, trace.TryRange(fromS, untilS, out var lowest, out var highest));
            Assert.Equal(inside.DefaultIfEmpty(double.PositiveInfinity).Min(), lowest);
            Assert.Equal(inside.DefaultIfEmpty(double.NegativeInfinity).Max(), highest);
        });

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
