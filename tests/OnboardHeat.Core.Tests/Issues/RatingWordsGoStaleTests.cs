using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tests.Support;

namespace OnboardHeat.Core.Tests.Issues;

/// <summary>What was told of a rating stayed as it was first said while it stood, and spoke of '1 minutes'.</summary>
public sealed class RatingWordsGoStaleTests
{
    private const double RisePerS = 3.0 / 60;

    private readonly List<string> _near = [];
    private readonly List<string> _exceeded = [];

    [Fact]
    public void RatingNear_CountsItsMinutesDownToOneMinuteAndReached()
    {
        WarmTo(72);

        Assert.Contains("about 9 minutes", _near[0], StringComparison.Ordinal);
        Assert.Contains(
            ": reached in about 2 minutes at 3.0 K/min", Assert.Single(_near, words => words.Contains("about 2 ")));
        Assert.Contains(
            ": reached in about 1 minute at 3.0 K/min", Assert.Single(_near, words => words.Contains("about 1 ")));
        Assert.EndsWith("its rating is 70 °C: reached", _near[^1], StringComparison.Ordinal);
        Assert.DoesNotContain(_near, words => words.Contains("1 minutes", StringComparison.Ordinal));
    }

    [Fact]
    public void RatingExceeded_IsToldAnewForEachKelvinHotter()
    {
        WarmTo(80);

        Assert.InRange(_exceeded.Count, 8, 11);
        Assert.Contains("9.", _exceeded[^1], StringComparison.Ordinal);
    }

    /// <summary>
    /// The flow pipe warms from 40 °C at 3 K/min; collects what is told each time that it is told otherwise.
    /// </summary>
    private void WarmTo(double celsius)
    {
        var hose = new CircuitPart("rear-hose", "Rear hose", Channel.Flow, 70);
        var bench = new MonitorBench(
            [Channel.TankTop, Channel.Flow, Channel.Return], [Signal.EngineRunning], null, hose);
        bench.Set(Channel.TankTop, 30).Set(Channel.Return, 38).Set(Signal.EngineRunning, true);
        for (var now = 40.0; now < celsius; now += RisePerS * bench.PeriodS)
        {
            bench.Set(Channel.Flow, now).Set(Channel.Return, now - 4).Run(bench.PeriodS);
            Collect(_near, bench.Alarm("rating-near/rear-hose")?.Because);
            Collect(_exceeded, bench.Alarm("rating-exceeded/rear-hose")?.Because);
        }
    }

    private static void Collect(List<string> told, string? words)
    {
        if (words is { Length: > 0 } && (told.Count == 0 || told[^1] != words))
        {
            told.Add(words);
        }
    }
}
