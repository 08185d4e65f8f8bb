namespace OnboardHeat.Glance.Report;

/// <summary>What a report is to show.</summary>
/// <param name="From">From this date on; null: seven days before <paramref name="To"/>.</param>
/// <param name="To">Up to this date; null: to the newest on record.</param>
/// <param name="IsShared">
/// Whether it is to be given away: without the van's name, dates, notes and people's words.
/// </param>
public sealed record ReportRequest(DateTimeOffset? From, DateTimeOffset? To, bool IsShared);
