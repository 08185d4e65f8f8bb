using System.CommandLine;
using OnboardHeat.Daemon.Replay;

namespace OnboardHeat.Daemon.Commands;

/// <summary>The command line of <c>replay</c>.</summary>
internal static class ReplayCommand
{
    public static Command Create()
    {
        var files = new Argument<string[]>("FILE") { Description = "Recorded drives (CSV), each by itself.", Arity = ArgumentArity.OneOrMore };
        var config = new Option<string?>("--config") { Description = "The van's configuration. Without it the defaults answer.", HelpName = "FILE" };
        var state = new Option<string?>("--state")
        {
            Description = "What was learnt of the van: read before the first FILE, written after the last.",
            HelpName = "FILE",
        };
        var every = new Option<double?>("--status-every") { Description = "Print a status line each so many seconds.", HelpName = "SECONDS" };
        every.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && result.GetValueOrDefault<double?>() is not (> 0 and < 1e9))
            {
                result.AddError("--status-every takes a number of seconds above 0.");
            }
        });
        var command = new Command("replay", "Runs recorded drives through the monitor and prints what it would have told, a JSON object a line.")
        {
            files, config, state, every,
        };
        command.SetAction(parsed => new ReplayRun
        {
            Files = parsed.GetRequiredValue(files),
            ConfigFile = parsed.GetValue(config),
            StateFile = parsed.GetValue(state),
            StatusEveryS = parsed.GetValue(every),
        }.Execute());
        return command;
    }
}
