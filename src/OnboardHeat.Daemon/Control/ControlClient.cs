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
            var answer = await ControlLine.ReadAsync(socket, ControlLine.AnswerBytesMax, inTime.Token)
                .ConfigureAwait(false);
            return answer is null ? null : JsonSerializer.Deserialize(answer, ControlJson.Default.ControlReply);
        }
        catch (Exception fault) when (
            fault is SocketException or OperationCanceledException or JsonException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>
    /// Asks for a transfer, lets <paramref name="move"/> take or give the bytes, and gives the last reply; null when no
    /// daemon listens.
    /// </summary>
    /// <exception cref="IOException">The daemon broke off: what came is not whole.</exception>
    public static async Task<ControlReply?> TransferAsync(
        string path, ControlRequest request, Func<FrameStream, CancellationToken, Task> move, TimeProvider time)
    {
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            using var inTime = new CancellationTokenSource(s_patience, time);
            await socket.ConnectAsync(new UnixDomainSocketEndPoint(path), inTime.Token).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is SocketException or OperationCanceledException or ArgumentException)
        {
            return null;
        }

        try
        {
            using var inTime = new CancellationTokenSource(s_patience, time);
            var json = JsonSerializer.SerializeToUtf8Bytes(request, ControlJson.Default.ControlRequest);
            await ControlLine.WriteAsync(socket, json, inTime.Token).ConfigureAwait(false);
            var first = await ReplyAsync(socket, inTime.Token).ConfigureAwait(false);
            if (!first.Ok)
            {
                return first;
            }

            await using var frames = new FrameStream(socket, time);
            await move(frames, CancellationToken.None).ConfigureAwait(false);
            await frames.CopyToAsync(Stream.Null, CancellationToken.None).ConfigureAwait(false);
            return await ReplyAsync(socket, CancellationToken.None).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is SocketException or OperationCanceledException or JsonException)
        {
            throw new IOException($"the daemon broke off: {fault.Message}", fault);
        }
    }

    private static async Task<ControlReply> ReplyAsync(Socket socket, CancellationToken cancellationToken)
    {
        var line = await ControlLine.ReadExactAsync(socket, ControlLine.AnswerBytesMax, cancellationToken)
            .ConfigureAwait(false);
        return line is not null && JsonSerializer.Deserialize(line, ControlJson.Default.ControlReply) is { } reply
            ? reply
            : throw new IOException("the daemon broke off");
    }
}
