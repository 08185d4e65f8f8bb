using System.Net.Sockets;
using System.Security.Authentication;
using MQTTnet;
using MQTTnet.Exceptions;

namespace OnboardHeat.Messaging.Link;

/// <summary>One clear line for each way in which a connection fails.</summary>
internal static class Reasons
{
    public const string NoAnswer = "no answer within 10 s";

    /// <summary>The reason behind an exception of the library: the innermost one that says something.</summary>
    public static string Of(Exception exception)
    {
        for (var e = exception; e is not null; e = e.InnerException)
        {
            switch (e)
            {
                case BrokerException or PacketTooLargeException:
                    return e.Message;
                case AuthenticationException:
                    return $"TLS: {OneLine((e.InnerException as AuthenticationException ?? e).Message)}";
                case SocketException socket:
                    return OneLine(socket.Message);
                case MqttCommunicationTimedOutException or OperationCanceledException or TimeoutException:
                    return NoAnswer;
                case MqttProtocolViolationException:
                    return $"speaks no MQTT 5 ({OneLine(e.Message)})";
            }
        }

        return OneLine(exception.Message);
    }

    /// <summary>Why the broker refused.</summary>
    public static string Of(MqttClientConnectResultCode code, string? words) => code switch
    {
        MqttClientConnectResultCode.UnsupportedProtocolVersion => "refused: it speaks no MQTT 5",
        MqttClientConnectResultCode.BadUserNameOrPassword => "refused: user name or password is wrong",
        MqttClientConnectResultCode.NotAuthorized => "refused: this user may not connect",
        _ => string.IsNullOrEmpty(words) ? $"refused: {code}" : $"refused: {code}, {OneLine(words)}",
    };

    // What a stranger sends goes into the log: no line breaks, no control characters, not endless.
    private static string OneLine(string words)
    {
        const int MaxLength = 200;
        var line = new string([.. words.Take(MaxLength).Select(c => char.IsControl(c) ? ' ' : c)]);
        return line.Trim().TrimEnd('.');
    }
}
