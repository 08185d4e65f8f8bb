namespace OnboardHeat.Engine.Ports;

/// <summary>
/// Copies whole months of the record out and in, also while it is being written. Every block is verified on both ways,
/// and recording is never held up for longer than some blocks.
/// </summary>
public interface IRecordVault
{
    /// <summary>Writes a backup of every month; gives what is in it, a line a month.</summary>
    /// <exception cref="IOException">The record cannot be read: what was written is not whole.</exception>
    Task<IReadOnlyList<string>> BackUpAsync(Stream to, CancellationToken cancellationToken);

    /// <summary>
    /// Puts the months of a backup in their places; those that are on record stay as they are. A month is there wholly
    /// and verified, or not at all. Gives what was done, a line a month.
    /// </summary>
    /// <exception cref="IOException">
    /// A month does not fit the record, or cannot be written; the months before it are there.
    /// </exception>
    /// <exception cref="InvalidDataException">This is no backup, a damaged one, or one of a newer version.</exception>
    Task<IReadOnlyList<string>> RestoreAsync(Stream from, CancellationToken cancellationToken);
}
