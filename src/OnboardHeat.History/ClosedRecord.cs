using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Backup;
using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;
using OnboardHeat.History.ReadBack;

namespace OnboardHeat.History;

/// <summary>
/// The record while no daemon writes it: locked, so that none begins to, and only read; nothing of it changes on the
/// card. Damage is passed over here and told by the next daemon that opens it.
/// </summary>
public sealed class ClosedRecord : IAsyncDisposable
{
    private readonly OwnerThread _owner = new();
    private readonly RecordDesk _desk;

    private ClosedRecord(RecordBook book)
    {
        _desk = new RecordDesk(_owner, TimeProvider.System) { Book = book };
        Reader = new RecordReader(_desk);
        Vault = new RecordVault(_desk);
    }

    /// <summary>Reads it.</summary>
    public IRecordReader Reader { get; }

    /// <summary>Backs it up; restores months where it was opened for that.</summary>
    public IRecordVault Vault { get; }

    /// <summary>Opens the record in a folder to put months into it; makes the folder where it is missing.</summary>
    /// <exception cref="IOException">Another process has it, or it cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write or lock it.</exception>
    public static ClosedRecord OpenToRestore(string folder) => Of(new CardFolder(folder));

    /// <summary>Opens the record in a folder to read.</summary>
    /// <exception cref="IOException">There is none, or another process has it.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not read or lock it.</exception>
    public static ClosedRecord Open(string folder) => Directory.Exists(folder)
        ? Of(new CardFolder(folder, isToRead: true))
        : throw new DirectoryNotFoundException($"there is no record in {folder}");

    internal static ClosedRecord Of(IRecordDisk disk) => new(RecordBook.ToRead(disk));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _owner.Ask(() =>
        {
            _desk.Book?.Dispose();
            _desk.Book = null;
            return true;
        });
        _desk.Dispose();
        _owner.Dispose();
    }
}
