using System.CommandLine;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>export</c>.</summary>
internal static class ExportCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var output = OutputFile.Option();
        var runs = Text("--runs", "RUNS", "Only these runs: 7, 3-7 or 3-.");
        var from = Text("--from", "DATE", "From this day (UTC) or time with an offset on.");
        var to = Text("--to", "DATE", "Up to the end of this day (UTC), or this time with an offset.");
        var command = new Command("export", "Writes the record as a recorded drive (CSV) that 'replay' reads.")
        {
            runs, from, to, output, config,
        };
        command.SetAction((parsed, _) => ExecuteAsync(
            parsed.GetValue(config)!,
            parsed.GetValue(output),
            new ControlRequest(
                RecordTransfers.Export, Runs: parsed.GetValue(runs) ?? "", From: parsed.GetValue(from) ?? "",
                To: parsed.GetValue(to) ?? "")));
        return command;
    }

    private static async Task<int> ExecuteAsync(string config, string? output, ControlRequest request)
    {
        if (!RecordSpan.TryParse(request.Runs, request.From, request.To, out _, out var problem))
        {
            await Console.Error.WriteLineAsync(problem).ConfigureAwait(false);
            return ExitCode.Usage;
        }

        if (Configured.Load(config, ConfigurationUse.Any) is not { } configuration)
        {
            return ExitCode.BadConfiguration;
        }

        var door = new RecordDoor(configuration.Options, TimeProvider.System);
        return await OutputFile.WriteAsync(output, to => door.GetAsync(request, to)).ConfigureAwait(false);
    }

    private static Option<string?> Text(string name, string value, string description) =>
        new(name) { Description = description, HelpName = value };
}
