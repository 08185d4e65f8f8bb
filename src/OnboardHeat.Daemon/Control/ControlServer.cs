using System.Net.Sockets;
using System.Text.Json;
using Microsoft.Extensions.Logging;
using OnboardHeat.Daemon.Running;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// The door for commands on the same machine: a Unix socket whose file mode says who may act. One question a
/// connection, bounded in size and time. A socket that cannot be made is told once and tried again; judging does not
/// need it.
/// </summary>
internal sealed class ControlServer(
    string path, Func<ControlRequest, CancellationToken, Task<ControlReply>> answer,
    Func<ControlRequest, Transfer?> transfers, TimeProvider time, ILogger log)
{
    /// <summary>Long enough for a survey of a bus that hangs.</summary>
    private static readonly TimeSpan s_answerWithin = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan s_retryEvery = TimeSpan.FromSeconds(30);

    /// <summary>People at one van, with room to spare; a flood waits in the kernel.</summary>
    private readonly SemaphoreSlim _places = new(8);

    public async Task RunAsync(CancellationToken ending)
    {
        var hasTold = false;
        while (!ending.IsCancellationRequested)
        {
            try
            {
                using var listener = Listen();
                Log.ControlOpen(log, path);
                await ServeAsync(listener, ending).ConfigureAwait(false);
                File.Delete(path);
            }
            catch (Exception fault) when (fault is SocketException or IOException or UnauthorizedAccessException)
            {
                if (!hasTold)
                {
                    Log.ControlClosed(log, path, fault.Message);
                }

                hasTold = true;
                await Task.Delay(s_retryEvery, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private Socket Listen()
    {
        // A socket that a killed daemon left behind; a living one holds the lock and would have kept us from coming
        // here.
        File.Delete(path);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            listener.Bind(new UnixDomainSocketEndPoint(path));
            File.SetUnixFileMode(
                path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead
                | UnixFileMode.GroupWrite);
            listener.Listen();
            return listener;
        }
        catch
        {
            listener.Dispose();
            throw;
        }
    }

    private async Task ServeAsync(Socket listener, CancellationToken ending)
    {
        while (!ending.IsCancellationRequested)
        {
            try
            {
                await _places.WaitAsync(ending).ConfigureAwait(false);
                var caller = await listener.AcceptAsync(ending).ConfigureAwait(false);
                _ = AnswerAsync(caller, ending);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    private async Task AnswerAsync(Socket caller, CancellationToken ending)
    {
        using var inTime = new CancellationTokenSource(s_answerWithin, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(inTime.Token, ending);
        using (caller)
        {
            try
            {
                var line = await ControlLine.ReadAsync(caller, ControlLine.QuestionBytesMax, either.Token)
                    .ConfigureAwait(false);
                if (TransferOf(line) is { } transfer)
                {
                    await TransferAsync(caller, transfer, ending).ConfigureAwait(false);
                    return;
                }

                var reply = line is null ? ControlReply.Refused("a question is one line of at most 4096 bytes")
                    : await AnswerAsync(line, either.Token).ConfigureAwait(false);
                await ReplyAsync(caller, reply, either.Token).ConfigureAwait(false);
            }
            catch (Exception fault) when (fault is SocketException or OperationCanceledException or IOException)
            {
                // Whoever asked has gone, or was too slow: there is nobody to tell.
            }
            finally
            {
                _places.Release();
            }
        }
    }

    private Transfer? TransferOf(byte[]? line)
    {
        try
        {
            return line is not null
                && JsonSerializer.Deserialize(line, ControlJson.Default.ControlRequest) is { } request
                ? transfers(request)
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Moves as many bytes as it takes: not the whole is bounded in time, each step is.</summary>
    private async Task TransferAsync(Socket caller, Transfer transfer, CancellationToken ending)
    {
        await ReplyAsync(caller, transfer.Problem is { } problem ? ControlReply.Refused(problem) : ControlReply.Done(),
            ending)
            .ConfigureAwait(false);
        if (transfer.Problem is not null)
        {
            return;
        }

        await using var frames = new FrameStream(caller, time);
        ControlReply last;
        try
        {
            last = await transfer.RunAsync(frames, ending).ConfigureAwait(false);
        }
        catch (IOException fault)
        {
            last = ControlReply.Refused(fault.Message);
        }

        await frames.EndAsync(ending).ConfigureAwait(false);
        await ReplyAsync(caller, last, ending).ConfigureAwait(false);
    }

    private static Task ReplyAsync(Socket caller, ControlReply reply, CancellationToken cancellationToken) =>
        ControlLine.WriteAsync(
        caller, JsonSerializer.SerializeToUtf8Bytes(reply, ControlJson.Default.ControlReply), cancellationToken);

    private async Task<ControlReply> AnswerAsync(byte[] line, CancellationToken cancellationToken)
    {
        try
        {
            return JsonSerializer.Deserialize(line, ControlJson.Default.ControlRequest) is { } request
                ? await answer(request, cancellationToken).ConfigureAwait(false)
                : ControlReply.Refused("a question is a JSON object");
        }
        catch (JsonException)
        {
            return ControlReply.Refused("a question is a JSON object with a command");
        }
    }
}
