using System.CommandLine;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>report</c>.</summary>
internal static class ReportCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        var output = OutputFile.Option();
        var from = Text("--from", "DATE",
            "From this day (UTC) or time with an offset on; else seven days before the end.");
        var to = Text("--to", "DATE",
            "Up to the end of this day (UTC), or this time with an offset; else to the newest on record.");
        var share = new Option<bool>("--share") { Description =
            "Leaves out the van's name, dates, notes and other words of people." };
        var command =
            new Command("report", "Writes the report of a trip: one HTML file that opens without a network and prints.")
        {
            from, to, share, output, config,
        };
        command.SetAction((parsed, _) => ExecuteAsync(
            parsed.GetValue(config)!,
            parsed.GetValue(output),
            new ControlRequest(
                RecordTransfers.Report,
                parsed.GetValue(share) ? RecordTransfers.Shared : "",
                From: parsed.GetValue(from) ?? "",
                To: parsed.GetValue(to) ?? "")));
        return command;
    }

    private static async Task<int> ExecuteAsync(string config, string? output, ControlRequest request)
    {
        if (!RecordSpan.TryParse("", request.From, request.To, out _, out var problem))
        {
            await Console.Error.WriteLineAsync(problem).ConfigureAwait(false);
            return ExitCode.Usage;
        }

        if (Configured.Load(config, ConfigurationUse.Any) is not { } configuration)
        {
            return ExitCode.BadConfiguration;
        }

        var door = new RecordDoor(configuration.Options, TimeProvider.System);
        return await OutputFile.WriteAsync(output, into => door.GetAsync(request, into)).ConfigureAwait(false);
    }

    private static Option<string?> Text(string name, string value, string description) =>
        new(name) { Description = description, HelpName = value };
}
