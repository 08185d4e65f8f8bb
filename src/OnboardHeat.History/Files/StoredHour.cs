namespace OnboardHeat.History.Files;

/// <summary>
/// A packed hour: scans, entries and roll-ups, all sealed. <paramref name="Number"/> is that of the first minute in it.
/// </summary>
internal sealed record StoredHour(long Number, byte[] Scans, byte[] Entries, byte[] Rollups);
