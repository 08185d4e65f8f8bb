using MQTTnet;
using MQTTnet.Adapter;
using MQTTnet.Channel;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Formatter;
using MQTTnet.Implementations;

namespace OnboardHeat.Messaging.Link;

/// <summary>
/// Builds the library's own packet adapter over a <see cref="LimitedChannel"/>, for a connection out and for one coming
/// in.
/// </summary>
internal sealed class LimitedAdapters : IMqttClientAdapterFactory
{
    // What the library's own factories use to begin with and to keep: messages here are at most some KB.
    private const int BufferBytes = 4096;
    private const int BufferKeptBytes = 65535;

    public IMqttChannelAdapter CreateClientAdapter(
        MqttClientOptions options, MqttPacketInspector packetInspector, IMqttNetLogger logger) =>
        new MqttChannelAdapter(
            new LimitedChannel(new MqttTcpChannel(options)),
            new MqttPacketFormatterAdapter(options.ProtocolVersion, new MqttBufferWriter(BufferBytes, BufferKeptBytes)),
            logger)
        {
            AllowPacketFragmentation = options.AllowPacketFragmentation,
            PacketInspector = packetInspector,
        };

    /// <summary>The adapter of a connection that came in; it finds out the protocol version by itself.</summary>
    public static MqttChannelAdapter ForIncoming(IMqttChannel channel, IMqttNetLogger logger) => new(
        new LimitedChannel(channel), new MqttPacketFormatterAdapter(new MqttBufferWriter(BufferBytes, BufferKeptBytes)),
        logger);
}
