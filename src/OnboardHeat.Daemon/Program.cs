using System.CommandLine;
using OnboardHeat.Daemon.Commands;

namespace OnboardHeat.Daemon;

internal static class Program
{
    private const string What =
        "How much hot water is in the van, when it is ready, and what goes wrong with the coolant that heats it.";

    private static async Task<int> Main(string[] args)
    {
        var root = new Command("onboardheat", What)
        {
            RunCommand.Create(),
            CheckCommand.Create(),
            ProbesCommand.Create(),
            ReplayCommand.Create(),
            DemoCommand.Create(),
            ExportCommand.Create(),
            ImportCommand.Create(),
            BackupCommand.Create(),
            RestoreCommand.Create(),
            ReportCommand.Create(),
        };
        foreach (var action in (IEnumerable<Command>)[.. ActionCommands.Create(), .. PairCommands.Create()])
        {
            root.Subcommands.Add(action);
        }

        root.Options.Add(new System.CommandLine.Help.HelpOption());
        root.Options.Add(new VersionOption());

        // A file whose name begins with '@' is a file, not a list of arguments.
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            return TellUsage(parsed);
        }

        try
        {
            // Stopping takes the time that the record needs; the library's own limit would end a flush half way.
            return await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null,
                });
        }
        catch (Exception e)
        {
            await Console.Error.WriteLineAsync($"onboardheat: this is a fault of the program: {e}");
            return ExitCode.Failed;
        }
    }

    private static int TellUsage(ParseResult parsed)
    {
        foreach (var error in parsed.Errors)
        {
            Console.Error.WriteLine(error.Message);
        }

        var command = parsed.CommandResult.Command;
        Console.Error.WriteLine(
            command.Name == "onboardheat" ? "See 'onboardheat --help'." : $"See 'onboardheat {command.Name} --help'.");
        return ExitCode.Usage;
    }
}
