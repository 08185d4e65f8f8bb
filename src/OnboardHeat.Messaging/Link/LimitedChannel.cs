using System.Buffers;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using MQTTnet.Channel;

namespace OnboardHeat.Messaging.Link;

/// <summary>
/// A channel that ends the connection when the other side begins too large a packet. The library takes memory for a
/// packet as soon as its header says how long it is, whatever maximum was agreed: 256 MB would be the end of a small
/// computer.
/// </summary>
internal sealed class LimitedChannel(IMqttChannel inner) : IMqttChannel
{
    private readonly PacketGauge _gauge = new();

    public X509Certificate2? ClientCertificate => inner.ClientCertificate;

    public EndPoint? RemoteEndPoint => inner.RemoteEndPoint;

    public EndPoint? LocalEndPoint => inner.LocalEndPoint;

    public bool IsSecureConnection => inner.IsSecureConnection;

    public Task ConnectAsync(CancellationToken cancellationToken) => inner.ConnectAsync(cancellationToken);

    public Task DisconnectAsync(CancellationToken cancellationToken) => inner.DisconnectAsync(cancellationToken);

    public async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        var read = await inner.ReadAsync(buffer, offset, count, cancellationToken);
        return _gauge.Observe(buffer.AsSpan(offset, read), LinkLimits.MaxPacketBytes) is { } bytes
            ? throw new PacketTooLargeException(bytes)
            : read;
    }

    public Task WriteAsync(ReadOnlySequence<byte> buffer, bool isEndOfPacket, CancellationToken cancellationToken) =>
        inner.WriteAsync(buffer, isEndOfPacket, cancellationToken);

    public void Dispose() => inner.Dispose();
}
