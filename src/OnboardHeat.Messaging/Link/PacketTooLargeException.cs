namespace OnboardHeat.Messaging.Link;

/// <summary>
/// The other side began a packet that is larger than it was told it may be. Thrown before memory is taken for it.
/// </summary>
internal sealed class PacketTooLargeException(long bytes) : IOException(
    $"sent a packet of {bytes} bytes, {LinkLimits.MaxPacketBytes} are the limit");
