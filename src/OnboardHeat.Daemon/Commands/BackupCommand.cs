using System.CommandLine;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;
using OnboardHeat.History;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>backup</c>.</summary>
internal static class BackupCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var file = new Argument<string>("FILE")
        {
            Description = "The backup to write; it is read back before the command ends.",
        };
        var command =
            new Command("backup", "Copies all months of the record into one verified file, while the daemon runs.")
        {
            file, config,
        };
        command.SetAction((parsed, _) => ExecuteAsync(parsed.GetRequiredValue(file), parsed.GetValue(config)!));
        return command;
    }

    private static async Task<int> ExecuteAsync(string file, string config)
    {
        if (Configured.Load(config, ConfigurationUse.Any) is not { } configuration)
        {
            return ExitCode.BadConfiguration;
        }

        var door = new RecordDoor(configuration.Options, TimeProvider.System);
        var code = await OutputFile.WriteAsync(file,
            to => door.GetAsync(new ControlRequest(RecordTransfers.Backup), to))
            .ConfigureAwait(false);
        return code == ExitCode.Done ? await VerifyAsync(file).ConfigureAwait(false) : code;
    }

    private static async Task<int> VerifyAsync(string file)
    {
        try
        {
            await using var stream = File.OpenRead(file);
            var months = await BackupFile.ReadAsync(stream, CancellationToken.None).ConfigureAwait(false);
            Console.WriteLine(
                $"{file}: read back and verified, {months.Count} {(months.Count == 1 ? "month" : "months")}");
            return ExitCode.Done;
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException)
        {
            await Console.Error.WriteLineAsync($"{file}: does not read back: {fault.Message}").ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }
}
