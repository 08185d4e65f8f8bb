using Microsoft.Win32.SafeHandles;

namespace OnboardHeat.History.Disk;

/// <summary>A file on the real card.</summary>
internal sealed class CardFile(SafeFileHandle handle) : IRecordFile
{
    public long Length => RandomAccess.GetLength(handle);

    public int Read(long offset, Span<byte> into)
    {
        var had = 0;
        while (had < into.Length)
        {
            var got = RandomAccess.Read(handle, into[had..], offset + had);
            if (got == 0)
            {
                break;
            }

            had += got;
        }

        return had;
    }

    public void Write(long offset, ReadOnlySpan<byte> bytes) => RandomAccess.Write(handle, bytes, offset);

    public void SetLength(long length) => RandomAccess.SetLength(handle, length);

    public void Sync() => RandomAccess.FlushToDisk(handle);

    public void Dispose() => handle.Dispose();
}
