namespace OnboardHeat.History.Disk;

/// <summary>
/// A file that can be read and written while nothing of it changes on the card: what is written stays in memory. A
/// damaged file is looked at through it, because the engine writes to what it opens.
/// </summary>
internal sealed class OverlayFile(IRecordFile below) : IRecordFile
{
    private const int PieceBytes = LogStream.PageBytes;

    private readonly Dictionary<long, byte[]> _written = [];
    private long _belowLength = below.Length;

    public long Length { get; private set; } = below.Length;

    public int Read(long offset, Span<byte> into)
    {
        var had = (int)Math.Clamp(Length - offset, 0, into.Length);
        var done = 0;
        while (done < had)
        {
            var piece = (offset + done) / PieceBytes;
            var from = (int)((offset + done) % PieceBytes);
            var count = Math.Min(PieceBytes - from, had - done);
            if (_written.TryGetValue(piece, out var written))
            {
                written.AsSpan(from, count).CopyTo(into[done..]);
            }
            else
            {
                ReadBelow(offset + done, into.Slice(done, count));
            }

            done += count;
        }

        return had;
    }

    public void Write(long offset, ReadOnlySpan<byte> bytes)
    {
        var done = 0;
        while (done < bytes.Length)
        {
            var number = (offset + done) / PieceBytes;
            var from = (int)((offset + done) % PieceBytes);
            var count = Math.Min(PieceBytes - from, bytes.Length - done);
            var piece = Piece(number);
            bytes.Slice(done, count).CopyTo(piece.AsSpan(from));
            _written[number] = piece;
            done += count;
        }

        Length = Math.Max(Length, offset + bytes.Length);
    }

    public void SetLength(long length)
    {
        Length = length;
        _belowLength = Math.Min(_belowLength, length);
        foreach (var number in _written.Keys.Where(n => n * PieceBytes >= length).ToArray())
        {
            _written.Remove(number);
        }
    }

    public void Sync()
    {
        // Nothing of it is to reach the card.
    }

    public void Dispose() => below.Dispose();

    private byte[] Piece(long number)
    {
        if (_written.TryGetValue(number, out var piece))
        {
            return piece;
        }

        piece = new byte[PieceBytes];
        ReadBelow(number * PieceBytes, piece);
        return piece;
    }

    private void ReadBelow(long offset, Span<byte> into)
    {
        var left = (int)Math.Clamp(_belowLength - offset, 0, into.Length);
        below.Read(offset, into[..left]);
        into[left..].Clear();
    }
}
