using System.Net.Sockets;
using System.Text.Json;

namespace OnboardHeat.Daemon.Control;

/// <summary>Asks the daemon beside us.</summary>
internal static class ControlClient
{
    /// <summary>A little more than the daemon takes for its slowest answer.</summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(12);

    /// <summary>The answer; null when no daemon listens there or it does not answer.</summary>
    public static async Task<ControlReply?> AskAsync(string path, ControlRequest request, TimeProvider time)
    {
        using var inTime = new CancellationTokenSource(s_patience, time);
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            await socket.ConnectAsync(new UnixDomainSocketEndPoint(path), inTime.Token).ConfigureAwait(false);
            var json = JsonSerializer.SerializeToUtf8Bytes(request, ControlJson.Default.ControlRequest);
            await ControlLine.WriteAsync(socket, json, inTime.Token).ConfigureAwait(false);
            var answer = await ControlLine.ReadAsync(socket, ControlLine.AnswerBytesMax, inTime.Token).ConfigureAwait(false);
            return answer is null ? null : JsonSerializer.Deserialize(answer, ControlJson.Default.ControlReply);
        }
        catch (Exception fault) when (fault is SocketException or OperationCanceledException or JsonException or ArgumentException)
        {
            return null;
        }
    }
}
