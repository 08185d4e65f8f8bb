namespace OnboardHeat.History.Disk;

/// <summary>A file in memory: stands for a log that is not there while a month is only looked at.</summary>
internal sealed class MemoryFile : IRecordFile
{
    private byte[] _bytes = [];

    public long Length { get; private set; }

    public int Read(long offset, Span<byte> into)
    {
        var had = (int)Math.Clamp(Length - offset, 0, into.Length);
        _bytes.AsSpan((int)Math.Min(offset, Length), had).CopyTo(into);
        return had;
    }

    public void Write(long offset, ReadOnlySpan<byte> bytes)
    {
        Reserve(offset + bytes.Length);
        bytes.CopyTo(_bytes.AsSpan((int)offset));
        Length = Math.Max(Length, offset + bytes.Length);
    }

    public void SetLength(long length)
    {
        Reserve(length);
        if (length > Length)
        {
            _bytes.AsSpan((int)Length, (int)(length - Length)).Clear();
        }

        Length = length;
    }

    public void Sync()
    {
        // There is no card below.
    }

    public void Dispose()
    {
        // Nothing to let go of.
    }

    private void Reserve(long length)
    {
        if (length > _bytes.Length)
        {
            Array.Resize(ref _bytes, (int)Math.Max(length, _bytes.Length * 2L));
        }
    }
}
