using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// When lamp and buzzer were last tested, by the wall clock: a month is longer than any run. A test while the clock was
/// not known to be right is dated once it is. A van never tested counts from the day it was first seen.
/// </summary>
internal sealed class TestDiary(DateTimeOffset? kept)
{
    private double? _undatedS;

    /// <summary>The date to keep; null while no right clock was ever seen.</summary>
    public DateTimeOffset? Last { get; private set; } = kept;

    /// <summary>Days since then, not negative; null while it cannot be told.</summary>
    public double? DaysSince { get; private set; }

    /// <summary>A person tests, and looks and listens.</summary>
    public void Take(PersonAction action, double elapsedS)
    {
        if (action.Kind == ActionKind.Test)
        {
            _undatedS = elapsedS;
        }
    }

    /// <summary>Looks at the clock of a scan.</summary>
    public void Observe(Scan scan)
    {
        if (scan is not { IsUtcTrusted: true, Utc: { } utc })
        {
            DaysSince = null;
            return;
        }

        if (_undatedS is { } testedS)
        {
            Last = utc - TimeSpan.FromSeconds(scan.Elapsed.TotalSeconds - testedS);
            _undatedS = null;
        }

        // A date in the future comes of a clock that was wrong when it was thought right.
        Last = Last is { } last && last <= utc ? last : utc;
        DaysSince = (utc - Last.Value).TotalDays;
    }
}
