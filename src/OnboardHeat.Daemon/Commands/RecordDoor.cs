using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;
using OnboardHeat.Glance.Report;
using OnboardHeat.History;

namespace OnboardHeat.Daemon.Commands;

/// <summary>
/// Gets something of the record as bytes: from the daemon where one runs, because nothing else may open its files; else
/// from the folder itself, under its lock.
/// </summary>
internal sealed class RecordDoor(OnboardHeatOptions options, TimeProvider time)
{
    /// <summary>
    /// Moves the bytes of a request into a stream. Exit 65 when it is refused, 69 when the record is in use and no
    /// daemon answers.
    /// </summary>
    public async Task<int> GetAsync(ControlRequest request, Stream into)
    {
        try
        {
            var reply = await ControlClient.TransferAsync(
                options.Control.Socket, request, (frames, cancel) => frames.CopyToAsync(into, cancel), time)
                .ConfigureAwait(false)
                ?? await FromFolderAsync(request, into).ConfigureAwait(false);
            foreach (var line in reply?.Lines ?? [])
            {
                await Console.Error.WriteLineAsync(line).ConfigureAwait(false);
            }

            return reply is null ? ExitCode.NoDaemon : reply.Ok ? ExitCode.Done : ExitCode.BadInput;
        }
        catch (Exception fault) when (
            fault is (IOException or UnauthorizedAccessException) and not OutputClosedException)
        {
            await Console.Error.WriteLineAsync($"{request.Command}: {fault.Message}; what was written is not whole")
                .ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }

    /// <summary>Gives bytes to a request: to the daemon where one runs, else to the folder. Exits as above.</summary>
    public async Task<int> GiveAsync(ControlRequest request, Stream from)
    {
        var reply = await ControlClient.TransferAsync(
            options.Control.Socket,
            request,
            async (frames, cancel) =>
            {
                await from.CopyToAsync(frames, cancel).ConfigureAwait(false);
                await frames.EndAsync(cancel).ConfigureAwait(false);
            },
            time).ConfigureAwait(false)
            ?? await ToFolderAsync(request, from).ConfigureAwait(false);
        if (reply is not null)
        {
            AskDaemon.Show(reply);
        }

        return reply is null ? ExitCode.NoDaemon : reply.Ok ? ExitCode.Done : ExitCode.BadInput;
    }

    private Task<ControlReply?> ToFolderAsync(ControlRequest request, Stream from) =>
        OfFolderAsync(() => ClosedRecord.OpenToRestore(options.History.Folder), request, from);

    private Task<ControlReply?> FromFolderAsync(ControlRequest request, Stream into) =>
        OfFolderAsync(() => ClosedRecord.Open(options.History.Folder), request, into);

    private async Task<ControlReply?> OfFolderAsync(Func<ClosedRecord> open, ControlRequest request, Stream bytes)
    {
        ClosedRecord record;
        try
        {
            record = open();
        }
        catch (DirectoryNotFoundException fault)
        {
            return ControlReply.Refused(fault.Message);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"no daemon answers at {options.Control.Socket}, and {fault.Message}")
                .ConfigureAwait(false);
            return null;
        }

        await using (record.ConfigureAwait(false))
        {
            var report = new TripReport(record.Reader, options.Describe(options.Fitted()), options.Van.Id, time);
            var transfer = new RecordTransfers(record.Reader, record.Vault, options.Fitted(), report).Find(request)!;
            return transfer.Problem is { } problem
                ? ControlReply.Refused(problem)
                : await transfer.RunAsync(bytes, CancellationToken.None).ConfigureAwait(false);
        }
    }
}
