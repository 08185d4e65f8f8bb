using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>One run's part of one file, with how to date it.</summary>
internal sealed record SpanRef(MonthName File, int Run, long FirstNumber, long LastNumber, TimeSpan First,
    TimeSpan Last, RunDates Dates)
{
    /// <summary>
    /// Whether any of it may lie between two dates. Where it has no date at all, it lies before all that have.
    /// </summary>
    public bool Touches(DateTimeOffset from, DateTimeOffset to) =>
        (Dates.At(Last) ?? DateTimeOffset.MinValue) >= from && (Dates.At(First) ?? DateTimeOffset.MinValue) <= to;
}
