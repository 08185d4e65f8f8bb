using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Tests.Watch;

public sealed class TestDueWatcherTests
{
    private static readonly DateTimeOffset s_start = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void MonthWithoutATest_IsAsked_AndTheTestAnswersIt()
    {
        var kept = Kept(s_start.AddDays(-32));
        var monitor = Monitor(kept);
        Assert.Contains("test-due", Raised(monitor, 0, s_start));
        monitor.Observe(Scan(10, s_start.AddSeconds(10), new PersonAction(ActionKind.Test, "", "by button")));
        var after = monitor.Observe(Scan(12, s_start.AddSeconds(12)));
        Assert.DoesNotContain(after.Alarms, alarm => alarm.Definition.Name == "test-due" && alarm.IsPresent);
        Assert.Equal(s_start.AddSeconds(10), monitor.Keep().Tested);
    }

    [Fact]
    public void VanSeenForTheFirstTime_CountsFromThatDay()
    {
        var monitor = Monitor(KeptState.Fresh);
        Assert.Empty(Raised(monitor, 0, s_start));
        Assert.Equal(s_start, monitor.Keep().Tested);
        Assert.Empty(Raised(Monitor(monitor.Keep()), 0, s_start.AddDays(30)));
        Assert.Contains("test-due", Raised(Monitor(monitor.Keep()), 0, s_start.AddDays(31.1)));
    }

    [Fact]
    public void ClockNotKnownToBeRight_AsksNothing_AndATestIsDatedOnceItIs()
    {
        var monitor = Monitor(Kept(s_start.AddDays(-90)));
        Assert.Empty(Raised(monitor, 0, utc: null));
        monitor.Observe(Scan(100, null, new PersonAction(ActionKind.Test, "", "")));
        Assert.Empty(Raised(monitor, 1000, s_start));
        Assert.Equal(s_start.AddSeconds(-900), monitor.Keep().Tested);
    }

    [Fact]
    public void DateInTheFuture_IsNotWaitedFor()
    {
        var monitor = Monitor(Kept(s_start.AddYears(5)));
        Assert.Empty(Raised(monitor, 0, s_start));
        Assert.Equal(s_start, monitor.Keep().Tested);
    }

    [Fact]
    public void VanWithoutLampAndBuzzer_IsNeverAsked()
    {
        var van = new VanDescription { Fitted = new FittedSet([Channel.TankTop], []) };
        var monitor = new Monitor(van, Kept(s_start.AddYears(-1)), ForecastTiming.WhenAsked);
        Assert.Empty(Raised(monitor, 0, s_start));
    }

    private static KeptState Kept(DateTimeOffset tested) => KeptState.Fresh with { Tested = tested };

    private static Monitor Monitor(KeptState kept) => new(
        new VanDescription { Fitted = new FittedSet([Channel.TankTop], []), HasLampOrBuzzer = true },
        kept, ForecastTiming.WhenAsked);

    private static IEnumerable<string> Raised(Monitor monitor, double elapsedS, DateTimeOffset? utc) =>
        monitor.Observe(Scan(elapsedS, utc)).Changes.Where(c => c.IsRaised).Select(c => c.Definition.Name);

    private static Scan Scan(double elapsedS, DateTimeOffset? utc, params PersonAction[] actions)
    {
        var scan = new Scan
        {
            Elapsed = TimeSpan.FromSeconds(elapsedS), Utc = utc, IsUtcTrusted = utc is not null, Actions = actions,
        };
        scan[Channel.TankTop] = Reading.Of(40);
        return scan;
    }
}
