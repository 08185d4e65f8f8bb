using System.CommandLine;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;
using OnboardHeat.History;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>restore</c>.</summary>
internal static class RestoreCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var file = new Argument<string>("FILE") { Description = "A backup." };
        var dryRun =
            new Option<bool>("--dry-run") { Description = "Verify the backup and say what is in it; change nothing." };
        var command =
            new Command("restore", "Puts months of a backup back into the record; those on record stay as they are.")
        {
            file, dryRun, config,
        };
        command.SetAction((parsed, _) => ExecuteAsync(
            parsed.GetRequiredValue(file), parsed.GetValue(dryRun), parsed.GetValue(config)!));
        return command;
    }

    private static async Task<int> ExecuteAsync(string file, bool isDryRun, string config)
    {
        try
        {
            await using var stream = File.OpenRead(file);

            // The whole of it is verified before the first month is touched.
            var months = await BackupFile.ReadAsync(stream, CancellationToken.None).ConfigureAwait(false);
            if (isDryRun)
            {
                months.ToList().ForEach(Console.WriteLine);
                return ExitCode.Done;
            }

            if (Configured.Load(config, ConfigurationUse.Any) is not { } configuration)
            {
                return ExitCode.BadConfiguration;
            }

            stream.Position = 0;
            var door = new RecordDoor(configuration.Options, TimeProvider.System);
            return await door.GiveAsync(new ControlRequest(RecordTransfers.Restore), stream).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            await Console.Error.WriteLineAsync($"{file}: {fault.Message}").ConfigureAwait(false);
            return ExitCode.BadInput;
        }
    }
}
