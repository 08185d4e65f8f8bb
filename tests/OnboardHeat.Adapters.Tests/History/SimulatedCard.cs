using OnboardHeat.History.Disk;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>
/// A card in memory that behaves as cards do when the power goes: what was not synced may be lost, arrive in another
/// order, or be torn at a sector. It can also fail its N-th operation, or be full.
/// </summary>
internal sealed class SimulatedCard : IRecordDisk
{
    public const int SectorBytes = 512;

    private readonly Dictionary<string, SimulatedFile> _files = [];
    private bool _isLocked;

    /// <summary>Counts writes, syncs, opens and the like; tells the test when.</summary>
    public Action<string>? OnOperation { get; set; }

    public long FreeBytes { get; set; } = long.MaxValue;

    public long Syncs { get; private set; }

    public long BytesWritten { get; private set; }

    public IReadOnlyList<string> Names() => [.. _files.Keys];

    public byte[] this[string name]
    {
        get => _files[name].Seen.ToArray();
        set => _files[name] = new SimulatedFile(this, value);
    }

    public IRecordFile Open(string name)
    {
        Do("open");
        if (!_files.TryGetValue(name, out var file))
        {
            _files[name] = file = new SimulatedFile(this, []);
        }

        return new Handle(file);
    }

    public void Rename(string from, string to)
    {
        Do("rename");
        _files[to] = _files[from];
        _files.Remove(from);
    }

    public void Delete(string name)
    {
        Do("delete");
        _files.Remove(name);
    }

    public long LengthOf(string name) => _files.TryGetValue(name, out var file) ? file.Seen.Count : 0;

    public IDisposable Lock()
    {
        if (_isLocked)
        {
            throw new IOException("the record is in use");
        }

        _isLocked = true;
        return new Unlock(this);
    }

    /// <summary>
    /// The card as it may be found after the power went at this moment: each unsynced write is there, lost, or there in
    /// part, whatever became of those before it.
    /// </summary>
    public SimulatedCard AfterPowerCut(Random random)
    {
        var after = new SimulatedCard();
        foreach (var (name, file) in _files)
        {
            after._files[name] = new SimulatedFile(after, file.AfterPowerCut(random));
        }

        return after;
    }

    internal void Do(string operation, long bytes = 0)
    {
        OnOperation?.Invoke(operation);
        BytesWritten += bytes;
        Syncs += operation == "sync" ? 1 : 0;
    }

    private sealed class Unlock(SimulatedCard card) : IDisposable
    {
        public void Dispose() => card._isLocked = false;
    }

    private sealed class Handle(SimulatedFile file) : IRecordFile
    {
        public long Length => file.Seen.Count;

        public int Read(long offset, Span<byte> into) => file.Read(offset, into);

        public void Write(long offset, ReadOnlySpan<byte> bytes) => file.Write(offset, bytes);

        public void SetLength(long length) => file.SetLength(length);

        public void Sync() => file.Sync();

        public void Dispose()
        {
            // Closing a file syncs nothing.
        }
    }
}
