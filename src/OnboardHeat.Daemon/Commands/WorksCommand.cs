using System.CommandLine;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Engine.Actions;

namespace OnboardHeat.Daemon.Commands;

/// <summary>
/// The command lines of works on the circuit. By itself <c>works</c> tells how they stand and helps with bleeding;
/// ending them asks what was changed, because what was learnt of a hose that is gone must not be believed.
/// </summary>
internal static class WorksCommand
{
    public static Command Create()
    {
        var config = ConfigurationFile.Option();
        const string What = "Work on the coolant circuit: how it stands, and help with bleeding.";
        var works = new Command("works", What) { config };
        works.Subcommands.Add(ActionCommands.Plain(
            "begin", ActionKind.WorksBegin, "Work begins: the circuit is not watched, nothing is learnt."));
        works.Subcommands.Add(End());
        works.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!, new ControlRequest(WorksAnswer.Command)));
        return works;
    }

    private static Command End()
    {
        var config = ConfigurationFile.Option();
        var changed = new Option<string[]>("--changed")
        {
            Description =
                "What was changed: hoses, insulation, coil, probe, probe/CHANNEL, coolant, nothing. Repeatable.",
            HelpName = "WHAT",
        };
        changed.Validators.Add(static result =>
        {
            foreach (var what in result.GetValueOrDefault<string[]>() ?? [])
            {
                if (ActionCheck.ProblemOf(new PersonAction(ActionKind.Changed, what, "")) is { } problem)
                {
                    result.AddError(problem);
                }
            }
        });
        var end = new Command("end", "Work has ended: the circuit is watched again.") { changed, config };
        end.SetAction((parsed, _) => EndAsync(parsed.GetValue(config)!, parsed.GetValue(changed) ?? []));
        return end;
    }

    private static async Task<int> EndAsync(string config, string[] changed)
    {
        var ended = new ControlRequest(PersonAction.NameOf(ActionKind.WorksEnd));
        var code = await AskDaemon.ActAsync(config, ended).ConfigureAwait(false);
        if (code != ExitCode.Done)
        {
            return code;
        }

        if (changed.Length == 0)
        {
            changed = await AskAsync().ConfigureAwait(false);
        }

        foreach (var what in changed)
        {
            var mark = new ControlRequest(PersonAction.NameOf(ActionKind.Changed), what);
            var marked = await AskDaemon.ActAsync(config, mark).ConfigureAwait(false);
            code = code == ExitCode.Done ? marked : code;
        }

        return code;
    }

    /// <summary>Asks a person at a terminal; a script is told how to answer later.</summary>
    private static async Task<string[]> AskAsync()
    {
        if (Console.IsInputRedirected)
        {
            Console.WriteLine("Answer with: onboardheat changed hoses|insulation|coil|probe|coolant|nothing");
            return [];
        }

        Console.Write("Changed (words with spaces between, Enter to answer later): ");
        var line = await Console.In.ReadLineAsync().ConfigureAwait(false);
        return (line ?? "").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}
