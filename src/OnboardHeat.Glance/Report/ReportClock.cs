using System.Globalization;

namespace OnboardHeat.Glance.Report;

/// <summary>
/// How a report tells time: by the van's own clock, or, where it is to be shared, by the time since the trip began.
/// </summary>
internal sealed class ReportClock(DateTimeOffset start, TimeZoneInfo zone, bool isShared)
{
    /// <summary>A moment, with its day.</summary>
    public string Moment(DateTimeOffset? time) => time switch
    {
        null => "no date",
        { } known when isShared => SinceStart(known),
        { } known => Local(known).ToString("ddd d MMM yyyy HH:mm", CultureInfo.InvariantCulture),
    };

    /// <summary>What stands under a chart's axis.</summary>
    public string Tick(DateTimeOffset time, bool isDays) => isShared
        ? (isDays ? Text($"day {Day(time)}")
            : Text($"{Math.Floor((time - start).TotalHours):0}:{(time - start).Minutes:00}"))
        : Local(time).ToString(isDays ? "d MMM" : "HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Midnight or whole hours by this clock, so that ticks stand at round times.</summary>
    public DateTimeOffset RoundUp(DateTimeOffset time, TimeSpan step)
    {
        var origin = isShared ? start : new DateTimeOffset(Local(time).Date, Local(time).Offset);
        var steps = Math.Ceiling((time - origin) / step);
        return origin + (step * steps);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private DateTimeOffset Local(DateTimeOffset time) => TimeZoneInfo.ConvertTime(time, zone);

    private string SinceStart(DateTimeOffset time) =>
        Text($"day {Day(time)}, {(time - start).Hours}:{(time - start).Minutes:00} h");

    private int Day(DateTimeOffset time) => (int)Math.Floor((time - start).TotalDays) + 1;
}
