using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.Glance.Report;

namespace OnboardHeat.Daemon.Control;

/// <summary>
/// What a command gets of the record as a stream of bytes: from the running daemon's, or from a closed one.
/// </summary>
internal sealed class RecordTransfers(IRecordReader record, IRecordVault vault, FittedSet fitted, TripReport report)
{
    public const string Export = "export";
    public const string Report = "report";
    public const string Backup = "backup";
    public const string Restore = "restore";

    /// <summary>The target that asks for a report to give away.</summary>
    public const string Shared = "share";

    /// <summary>The transfer that a request asks for; null when it asks for none.</summary>
    public Transfer? Find(ControlRequest request) => request.Command switch
    {
        Export => ExportOf(request),
        Backup => new Transfer(null, async (to, cancel) =>
            ControlReply.Done(await vault.BackUpAsync(to, cancel).ConfigureAwait(false))),
        Restore => new Transfer(null, RestoreAsync),
        Report => ReportOf(request),
        _ => null,
    };

    /// <summary>
    /// Takes all that is sent even where it is refused, or the sender would wait for ever to be rid of it.
    /// </summary>
    private async Task<ControlReply> RestoreAsync(Stream from, CancellationToken cancellationToken)
    {
        try
        {
            return ControlReply.Done(await vault.RestoreAsync(from, cancellationToken).ConfigureAwait(false));
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException)
        {
            await from.CopyToAsync(Stream.Null, cancellationToken).ConfigureAwait(false);
            return ControlReply.Refused(fault.Message);
        }
    }

    private Transfer ExportOf(ControlRequest request)
    {
        var isGood = RecordSpan.TryParse(request.Runs, request.From, request.To, out var span, out var problem);
        return new Transfer(isGood ? null : problem, async (to, cancellationToken) =>
        {
            var export = new RecordExport(record, fitted);
            await export.WriteAsync(span, to, cancellationToken).ConfigureAwait(false);
            return ControlReply.Done(Summary(export));
        });
    }

    private Transfer ReportOf(ControlRequest request)
    {
        var isGood = RecordSpan.TryParse("", request.From, request.To, out var span, out var problem);
        return new Transfer(isGood ? null : problem, async (to, cancellationToken) =>
        {
            var asked = new ReportRequest(span.From, span.To, request.Target == Shared);
            return await report.WriteAsync(asked, to, cancellationToken).ConfigureAwait(false)
                ? ControlReply.Done()
                : ControlReply.Refused("there is nothing on record in this span");
        });
    }

    private static string Summary(RecordExport export) => export.Runs.Count == 0
        ? "there is nothing on record in this span"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{export.Scans} scans of {(export.Runs.Count == 1 ? "run" : "runs")} {Named(export.Runs)} exported");

    private static string Named(List<int> runs) =>
        runs.Count == 1 ? $"{runs[0]}" : string.Create(CultureInfo.InvariantCulture, $"{runs[0]} to {runs[^1]}");
}
