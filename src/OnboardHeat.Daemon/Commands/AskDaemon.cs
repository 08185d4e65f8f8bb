using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Commands;

/// <summary>Asks the running daemon and shows its answer.</summary>
internal static class AskDaemon
{
    /// <summary>Hands an action over. Exit 69 without a daemon, 65 when it refuses.</summary>
    public static async Task<int> ActAsync(string configurationFile, ControlRequest request)
    {
        var socket = SocketOf(configurationFile);
        var reply = await ControlClient.AskAsync(socket, request, TimeProvider.System).ConfigureAwait(false);
        if (reply is null)
        {
            await Console.Error.WriteLineAsync($"no daemon answers at {socket}; '{request.Command}' was not done")
                .ConfigureAwait(false);
            return ExitCode.NoDaemon;
        }

        Show(reply);
        return reply.Ok ? ExitCode.Done : ExitCode.BadInput;
    }

    /// <summary>Shows an answer: what was done on stdout, what was refused on stderr.</summary>
    public static void Show(ControlReply reply)
    {
        foreach (var line in reply.Lines)
        {
            (reply.Ok ? Console.Out : Console.Error).WriteLine(line);
        }
    }

    /// <summary>
    /// The socket that the configuration names. A person in the van need not be allowed to read the configuration.
    /// </summary>
    public static string SocketOf(string configurationFile)
    {
        var configuration = Configuration.Load(
            File.Exists(configurationFile) ? configurationFile : null, [], ConfigurationUse.Any);
        return configuration.Problems.Count == 0 ? configuration.Options.Control.Socket : new ControlOptions().Socket;
    }
}
