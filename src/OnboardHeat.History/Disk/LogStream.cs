namespace OnboardHeat.History.Disk;

/// <summary>
/// The engine's log with the barrier that it lacks. The engine appends a transaction's pages and takes it for committed
/// when the last one, marked, is written; it syncs nothing, and nothing says how many pages there were. After a power
/// cut the marked page may be there and others not: of 10,000 simulated cuts two thirds lost or broke the file. So the
/// marked page goes out unmarked first; when it and all before it are on the card, its first sector follows with the
/// mark, alone, and a sector is written whole or not at all.
/// </summary>
internal sealed class LogStream(IRecordFile file) : DataStream(file)
{
    /// <summary>Size of the engine's pages.</summary>
    public const int PageBytes = 8192;

    /// <summary>Byte of a page that marks the last page of a transaction.</summary>
    private const int MarkAt = 18;

    /// <summary>What a card writes whole or not at all.</summary>
    private const int SectorBytes = 512;

    private readonly byte[] _page = new byte[PageBytes];

    public override void Write(byte[] buffer, int offset, int count)
    {
        if (count != PageBytes || buffer[offset + MarkAt] == 0)
        {
            base.Write(buffer, offset, count);
            return;
        }

        var at = Position;
        buffer.AsSpan(offset, count).CopyTo(_page);
        var mark = _page[MarkAt];
        _page[MarkAt] = 0;
        File.Write(at, _page);
        File.Sync();
        _page[MarkAt] = mark;
        File.Write(at, _page.AsSpan(0, SectorBytes));
        File.Sync();
        Position = at + count;
    }
}
