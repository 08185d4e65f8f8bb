using System.Buffers.Binary;
using System.Net.Sockets;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// Bytes of any length over the control socket, in frames of a length and so many bytes; a frame of no length ends
/// them. So an end that nobody meant (a killed daemon) is told from the end of a whole transfer.
/// </summary>
internal sealed class FrameStream(Socket socket, TimeProvider time) : Stream
{
    private const int HeadBytes = 4;
    private const int FrameBytesMax = 1 << 20;

    /// <summary>A caller that takes or gives nothing for so long has gone to sleep: its place is needed.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    private readonly byte[] _head = new byte[HeadBytes];
    private int _left;
    private bool _isAtEnd;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Says that everything was sent.</summary>
    public async Task EndAsync(CancellationToken cancellationToken)
    {
        await SendAsync(new byte[HeadBytes], cancellationToken).ConfigureAwait(false);
    }

    public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer,
        CancellationToken cancellationToken = default)
    {
        while (buffer.Length > 0)
        {
            var piece = buffer[..Math.Min(buffer.Length, FrameBytesMax)];
            var frame = new byte[HeadBytes + piece.Length];
            BinaryPrimitives.WriteInt32BigEndian(frame, piece.Length);
            piece.CopyTo(frame.AsMemory(HeadBytes));
            await SendAsync(frame, cancellationToken).ConfigureAwait(false);
            buffer = buffer[piece.Length..];
        }
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (_left == 0 && !_isAtEnd)
        {
            for (var had = 0; had < HeadBytes;)
            {
                had += await ReceiveAsync(_head.AsMemory(had), cancellationToken).ConfigureAwait(false);
            }

            _left = BinaryPrimitives.ReadInt32BigEndian(_head);
            _isAtEnd = _left == 0;
            if (_left is < 0 or > FrameBytesMax)
            {
                throw new IOException("what came over the control socket is no transfer");
            }
        }

        if (_isAtEnd || buffer.Length == 0)
        {
            return 0;
        }

        var got = await ReceiveAsync(buffer[..Math.Min(buffer.Length, _left)], cancellationToken).ConfigureAwait(false);
        _left -= got;
        return got;
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private async Task<int> ReceiveAsync(Memory<byte> into, CancellationToken cancellationToken)
    {
        var got = await InTimeAsync(token => socket.ReceiveAsync(into, token), cancellationToken).ConfigureAwait(false);
        return got > 0 ? got : throw new IOException("the transfer over the control socket broke off");
    }

    private async Task SendAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        while (bytes.Length > 0)
        {
            var rest = bytes;
            bytes = bytes[await InTimeAsync(token => socket.SendAsync(rest, token), cancellationToken)
                .ConfigureAwait(false)..];
        }
    }

    private async Task<int> InTimeAsync(Func<CancellationToken, ValueTask<int>> transfer,
        CancellationToken cancellationToken)
    {
        using var late = new CancellationTokenSource(s_patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellationToken);
        try
        {
            return await transfer(either.Token).ConfigureAwait(false);
        }
        catch (SocketException broken)
        {
            throw new IOException($"the transfer over the control socket broke off: {broken.Message}", broken);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            throw new IOException("the other side of the control socket has not moved for half a minute");
        }
    }
}
