using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using OnboardHeat.Daemon.Replay;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>replay</c>.</summary>
internal static class ReplayCommand
{
    public static Command Create()
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Recorded drives (CSV), each by itself.",
            Arity = ArgumentArity.OneOrMore,
        };
        files.Validators.Add(result =>
        {
            // The library takes an option it does not know for one more file.
            foreach (var token in result.Tokens.Where(t => t.Value.StartsWith('-')))
            {
                result.AddError($"'{token.Value}' is no option of replay; a file of that name is './{token.Value}'.");
            }
        });
        var config = new Option<string?>("--config")
        {
            Description = "The van's configuration. Without it the defaults answer.",
            HelpName = "FILE",
        };
        var state = new Option<string?>("--state")
        {
            Description = "What was learnt of the van: read before the first FILE, written after the last.",
            HelpName = "FILE",
        };
        var every = new Option<double?>("--status-every")
        {
            Description = "Print a status line each so many seconds.",
            HelpName = "SECONDS",
            CustomParser = Span,
        };
        var command = new Command(
            "replay",
            "Runs recorded drives through the monitor and prints what it would have told, a JSON object a line.")
        {
            files, config, state, every,
        };
        command.SetAction(parsed => Run(
            parsed.GetRequiredValue(files), parsed.GetValue(config), parsed.GetValue(state), parsed.GetValue(every)));
        return command;
    }

    private static int Run(string[] files, string? configFile, string? stateFile, double? statusEveryS)
    {
        if (Configured.Load(configFile, ConfigurationUse.Any) is not { } configuration)
        {
            return ExitCode.BadConfiguration;
        }

        using var output = new StandardOutput();
        return new ReplayRun
        {
            Files = [.. files.Select(f => new RecordingFile(f))],
            Options = configuration.Options,
            Preface = configFile is null ? "no --config: " + Configured.Facts(configuration) : null,
            State = stateFile is null ? null : new KeptFile(stateFile, hasSecondCopy: false),
            StatusEveryS = statusEveryS,
            Output = output,
            Log = Console.Error,
        }.Execute();
    }

    /// <summary>The library's own conversion follows the locale and throws where it should tell.</summary>
    private static double? Span(ArgumentResult result)
    {
        var text = result.Tokens is [var token] ? token.Value : "";
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds)
            && seconds is > 0 and < 1e9)
        {
            return seconds;
        }

        result.AddError($"--status-every takes a number of seconds above 0, not '{text}'.");
        return null;
    }
}
