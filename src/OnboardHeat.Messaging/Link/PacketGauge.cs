namespace OnboardHeat.Messaging.Link;

/// <summary>
/// Follows a stream of packets just enough to know each one's length as soon as its header has passed (MQTT 5.0,
/// sections 2.1.4 and 1.5.5: one byte of type, then the remaining length, seven bits a byte, least significant first,
/// at most four bytes).
/// </summary>
internal sealed class PacketGauge
{
    private const int MaxLengthBytes = 4;

    private long _bodyLeft;
    private long _length;
    private int _headerBytes;

    /// <summary>Takes the next bytes of the stream. The length of the first packet above the limit, or null.</summary>
    public long? Observe(ReadOnlySpan<byte> bytes, int maxBytes)
    {
        while (!bytes.IsEmpty)
        {
            if (_bodyLeft > 0)
            {
                var passed = (int)Math.Min(_bodyLeft, bytes.Length);
                _bodyLeft -= passed;
                bytes = bytes[passed..];
                continue;
            }

            if (TakeHeaderByte(bytes[0]) && _bodyLeft > maxBytes)
            {
                return _bodyLeft;
            }

            bytes = bytes[1..];
        }

        return null;
    }

    // True when the header is complete. A fifth length byte is malformed; the library says so itself.
    private bool TakeHeaderByte(byte value)
    {
        if (_headerBytes == 0)
        {
            _headerBytes = 1;
            _length = 0;
            return false;
        }

        _length |= (long)(value & 0x7F) << (7 * (_headerBytes - 1));
        if ((value & 0x80) != 0 && _headerBytes < MaxLengthBytes)
        {
            _headerBytes++;
            return false;
        }

        _headerBytes = 0;
        _bodyLeft = _length;
        return true;
    }
}
