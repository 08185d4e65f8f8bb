namespace OnboardHeat.History.Disk;

/// <summary>
/// A stream as the database engine wants it, over a file of the record. The engine flushes its data stream at a
/// checkpoint and nowhere else; here a flush reaches the card, and so does a change of length.
/// </summary>
internal class DataStream(IRecordFile file) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => File.Length;

    public override long Position { get; set; }

    /// <summary>The file below.</summary>
    protected IRecordFile File { get; } = file;

    public override int Read(byte[] buffer, int offset, int count)
    {
        var had = File.Read(Position, buffer.AsSpan(offset, count));
        Position += had;
        return had;
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        File.Write(Position, buffer.AsSpan(offset, count));
        Position += count;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => Length + offset,
    };

    public override void SetLength(long value)
    {
        File.SetLength(value);
        File.Sync();
    }

    public override void Flush() => File.Sync();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            File.Dispose();
        }

        base.Dispose(disposing);
    }
}
