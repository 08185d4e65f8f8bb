using Microsoft.Win32.SafeHandles;

namespace OnboardHeat.Daemon;

/// <summary>
/// This process's output as bytes. The console's own stream takes writes to a closed pipe without a word, so a long
/// replay would work on for nobody; this one says so with an <see cref="OutputClosedException"/>.
/// </summary>
internal sealed class StandardOutput : Stream
{
    /// <summary>EPIPE and EBADF (errno.h): the reader has gone, or there never was one.</summary>
    private const int BrokenPipe = 32, NoDescriptor = 9;

    private readonly SafeFileHandle _handle = new(1, ownsHandle: false);
    private FileStream? _stream;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set =>
        throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            _stream ??= new FileStream(_handle, FileAccess.Write, bufferSize: 0);
            _stream.Write(buffer);
        }
        catch (Exception e) when (e.HResult is BrokenPipe or NoDescriptor || e is ArgumentException)
        {
            throw new OutputClosedException();
        }
    }

    protected override void Dispose(bool disposing)
    {
        _stream?.Dispose();
        _handle.Dispose();
        base.Dispose(disposing);
    }
}
