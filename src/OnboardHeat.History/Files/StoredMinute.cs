namespace OnboardHeat.History.Files;

/// <summary>
/// What one commit adds to a file: the scans of a minute (ten when parked) and the entries that belong to them, both
/// sealed.
/// </summary>
internal sealed record StoredMinute(long Number, byte[] Scans, byte[] Entries);
