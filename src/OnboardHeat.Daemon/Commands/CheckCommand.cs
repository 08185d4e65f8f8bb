using System.CommandLine;
using OnboardHeat.Daemon.Checking;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>check</c>.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var command = new Command(
            "check",
                "Tells the configuration in force, every probe and signal live, what can and cannot be judged, and "
                + "the first drive.")
        {
            config,
        };
        command.SetAction((parsed, cancellation) => ExecuteAsync(parsed.GetValue(config)!, cancellation));
        return command;
    }

    private static async Task<int> ExecuteAsync(string file, CancellationToken cancellation)
    {
        var request = new ControlRequest(CheckAnswer.Command);
        var reply = await ControlClient.AskAsync(
            AskDaemon.SocketOf(file), request, TimeProvider.System).ConfigureAwait(false);
        if (reply is { Ok: true })
        {
            AskDaemon.Show(reply);
        }

        // The daemon tells what is in force; whether the file as it stands would be taken at the next start is another
        // question.
        var isReadable = reply is null || IsReadable(file);
        var configuration = isReadable ? Configured.Load(file, ConfigurationUse.Run) : null;
        if (isReadable && configuration is null)
        {
            return ExitCode.BadConfiguration;
        }

        if (reply is null)
        {
            foreach (var line in await new OwnCheck(
                configuration!, file, TimeProvider.System).WriteAsync(cancellation).ConfigureAwait(false))
            {
                Console.Out.WriteLine(line);
            }
        }

        return ExitCode.Done;
    }

    /// <summary>Whoever may ask the daemon need not be allowed to read its configuration.</summary>
    private static bool IsReadable(string file)
    {
        try
        {
            using var stream = File.OpenRead(file);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
