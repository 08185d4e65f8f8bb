using OnboardHeat.History.Files;

namespace OnboardHeat.History.Backup;

/// <summary>One part of a backup; which of the others are there follows from its kind.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Month">The month that begins.</param>
/// <param name="About">What the month's file says about itself; its gaps come at the month's end.</param>
/// <param name="Hour">A packed hour.</param>
/// <param name="Minute">A minute.</param>
/// <param name="Gaps">Ranges of minutes known to be missing in the month that ends.</param>
internal sealed record BackupPart(
    BackupPartKind Kind, MonthName Month = default, About? About = null, StoredHour? Hour = null,
    StoredMinute? Minute = null,
    IReadOnlyList<(long From, long To)>? Gaps = null);
