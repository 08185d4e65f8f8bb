using System.Globalization;
using OnboardHeat.Daemon.Control;

namespace OnboardHeat.Daemon.Probing;

/// <summary>
/// The bus through the running daemon: it reads the fitted probes anyway, and only strangers are read besides.
/// </summary>
internal sealed class DaemonBusView(string socket, TimeProvider time) : IBusView
{
    public string Words => "read by the running daemon";

    /// <summary>The view, or null where no daemon answers.</summary>
    public static async Task<DaemonBusView?> TryOpenAsync(string socket, TimeProvider time) =>
        await ControlClient.AskAsync(
            socket, new ControlRequest("probes"), time).ConfigureAwait(false) is { Bus: not null }
            ? new DaemonBusView(socket, time)
            : null;

    public async Task<BusSight> LookAsync(CancellationToken cancellationToken) =>
        await ControlClient.AskAsync(
            socket, new ControlRequest("probes"), time).ConfigureAwait(false) is { Bus: { } sight }
            ? sight
            : throw new BusViewGoneException($"the daemon at {socket} answers no more");

    public async Task<string?> KeepOffsetAsync(string channel, double offsetKelvin, string reference)
    {
        var request = new ControlRequest(
            OffsetAnswer.Command, channel, string.Create(
                CultureInfo.InvariantCulture, $"{offsetKelvin:R} {reference}"));
        var reply = await ControlClient.AskAsync(socket, request, time).ConfigureAwait(false);
        return reply is null ? $"the daemon at {socket} answers no more" : reply.Ok ? null : string.Join("; ",
            reply.Lines);
    }

    public void Dispose()
    {
    }
}
