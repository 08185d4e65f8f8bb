using System.Globalization;

namespace OnboardHeat.Engine.Recordings;

/// <summary>Which part of the record is meant: whole runs, or what lies between two dates.</summary>
/// <param name="FirstRun">First run; 1 or more.</param>
/// <param name="LastRun">Last run, included.</param>
/// <param name="From">From this date on; null: from the beginning of the first run.</param>
/// <param name="To">Up to this date, included; null: to the end of the last run.</param>
public sealed record RecordSpan(int FirstRun, int LastRun, DateTimeOffset? From, DateTimeOffset? To)
{
    /// <summary>Everything.</summary>
    public static RecordSpan Whole { get; } = new(1, int.MaxValue, null, null);

    /// <summary>Whether dates cut it; then runs that have no date at all are left out.</summary>
    public bool IsByDate => From is not null || To is not null;

    /// <summary>Reads the options of a command; empty texts say nothing.</summary>
    /// <param name="runs"><c>7</c>, <c>3-7</c> or <c>3-</c>.</param>
    /// <param name="from">A day, <c>2026-05-03</c> (its beginning in UTC), or a time with an offset.</param>
    /// <param name="to">A day (its end in UTC) or a time with an offset.</param>
    /// <param name="span">What they say.</param>
    /// <param name="problem">What is wrong with them, in words; empty when nothing is.</param>
    public static bool TryParse(string runs, string from, string to, out RecordSpan span, out string problem)
    {
        ArgumentNullException.ThrowIfNull(runs);
        span = Whole;
        problem = "";
        if (runs.Length > 0 && !TryRuns(runs, ref span))
        {
            problem = $"'{Shown.Briefly(runs)}' names no runs; those are 7, 3-7 or 3-";
        }
        else if (!TryDate(from, TimeSpan.Zero, out var begin))
        {
            problem =
                $"'{Shown.Briefly(from)}' is no date; those are 2026-05-03 (a day in UTC) or 2026-05-03T09:12:41+02:00";
        }
        else if (!TryDate(to, TimeSpan.FromDays(1) - TimeSpan.FromTicks(1), out var end))
        {
            problem =
                $"'{Shown.Briefly(to)}' is no date; those are 2026-05-03 (a day in UTC) or 2026-05-03T09:12:41+02:00";
        }
        else if (begin > end)
        {
            problem = "the span ends before it begins";
        }
        else
        {
            span = span with { From = begin, To = end };
        }

        return problem.Length == 0;
    }

    private static bool TryRuns(string text, ref RecordSpan span)
    {
        var dash = text.IndexOf('-', StringComparison.Ordinal);
        var last = int.MaxValue;
        if (!TryRun(dash < 0 ? text : text[..dash], out var first)
            || (dash >= 0 && dash < text.Length - 1 && !TryRun(text[(dash + 1)..], out last)))
        {
            return false;
        }

        span = span with { FirstRun = first, LastRun = dash < 0 ? first : last };
        return span.FirstRun <= span.LastRun;
    }

    private static bool TryRun(string text, out int run) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out run) && run > 0;

    private static bool TryDate(string text, TimeSpan ofADay, out DateTimeOffset? date)
    {
        date = null;
        if (string.IsNullOrEmpty(text))
        {
            return true;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            date = new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) + ofADay;
            return true;
        }

        var isTime = IsoTime.TryParse(text, out var time);
        date = time;
        return isTime;
    }
}
