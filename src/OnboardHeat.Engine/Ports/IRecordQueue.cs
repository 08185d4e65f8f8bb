namespace OnboardHeat.Engine.Ports;

/// <summary>
/// The record as the queue for receivers that may be away for days: nothing is held in memory for them. Each entry has
/// a running number; a receiver reads on from its cursor and moves it when delivery was acknowledged. Delivery is in
/// order and at least once: a power cut may take back the cursor's last minutes, never an entry, so a receiver drops
/// numbers it has seen.
/// </summary>
public interface IRecordQueue
{
    /// <summary>Entries with numbers above <paramref name="after"/>, oldest first; empty when there are none.</summary>
    /// <param name="after">Number of the last entry already had; 0 for the beginning of the record.</param>
    /// <param name="max">At most so many; 1 to 1,000.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    ValueTask<IReadOnlyList<QueuedEntry>> ReadAfterAsync(long after, int max, CancellationToken cancellationToken);

    /// <summary>Number of the newest entry on record; 0 when there is none.</summary>
    ValueTask<long> ReadNewestAsync(CancellationToken cancellationToken);

    /// <summary>
    /// Where a receiver stands; null for one never seen (the caller decides whether it begins at the oldest or the
    /// newest).
    /// </summary>
    ValueTask<long?> ReadCursorAsync(string receiver, CancellationToken cancellationToken);

    /// <summary>
    /// The receiver has acknowledged everything up to this number. Returns at once; stored with the next block.
    /// </summary>
    void Advance(string receiver, long number);

    /// <summary>Completes when an entry above <paramref name="after"/> is on record.</summary>
    Task WaitForMoreAsync(long after, CancellationToken cancellationToken);
}
