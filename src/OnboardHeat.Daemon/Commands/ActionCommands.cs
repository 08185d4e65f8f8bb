using System.CommandLine;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Control;

namespace OnboardHeat.Daemon.Commands;

/// <summary>
/// The command lines of what a person says or does. They go to the running daemon; without one they end with exit 69.
/// </summary>
internal static class ActionCommands
{
    public static IEnumerable<Command> Create()
    {
        yield return Acknowledge();
        yield return Shelve();
        yield return WorksCommand.Create();
        yield return Plain("drained", ActionKind.Drained, "The tank was drained.");
        yield return Plain("filled", ActionKind.Filled, "The tank was filled.");
        yield return Plain(
            "repaired", ActionKind.Repaired, "What lost coolant is repaired: its alarm may return to normal.");
        yield return Plain("test", ActionKind.Test, "Tests lamp and buzzer now: look and listen.");
        yield return Changed();
        yield return Note();
    }

    /// <summary>The command of an action that needs no words.</summary>
    public static Command Plain(string name, ActionKind kind, string description)
    {
        var config = ConfigurationFile.Option();
        var command = new Command(name, description) { config };
        command.SetAction(
            (parsed, _) => AskDaemon.ActAsync(parsed.GetValue(config)!, new ControlRequest(PersonAction.NameOf(kind))));
        return command;
    }

    private static Command Acknowledge()
    {
        var config = ConfigurationFile.Option();
        var alarm = new Argument<string>("ALARM")
        {
            Description = "Name of the alarm, or alarm/subject; left out: all that stand.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command =
            new Command("acknowledge", "Says that an alarm was seen: silences it, never clears it.") { alarm, config };
        command.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!, new ControlRequest("acknowledge", parsed.GetValue(alarm) ?? "")));
        return command;
    }

    private static Command Shelve()
    {
        var config = ConfigurationFile.Option();
        var alarm = new Argument<string>("ALARM") { Description = "Name of a warning or an advice, or alarm/subject." };
        var minutes = new Option<double>("--minutes")
        {
            Description = "How long; else 480. At most a week.", HelpName = "MINUTES",
            DefaultValueFactory = static _ => 480,
        };
        minutes.Validators.Add(static result =>
        {
            if (result.GetValueOrDefault<double>() is not (> 0 and <= 10080))
            {
                result.AddError("--minutes takes a number above 0, 10080 at most.");
            }
        });
        var command = new Command("shelve", "Puts a warning or an advice aside for a time.") { alarm, minutes, config };
        command.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!,
            new ControlRequest(
                "shelve", parsed.GetValue(alarm)!, FormattableString.Invariant($"{parsed.GetValue(minutes)}"))));
        return command;
    }

    private static Command Changed()
    {
        var config = ConfigurationFile.Option();
        var what = new Argument<string>("WHAT")
        {
            Description = "hoses, insulation, coil, coolant, probe or probe/CHANNEL; nothing: the answer after works.",
        };
        var words = Words(isNeeded: false);
        var command = new Command(
            "changed", "Marks a change in the van: what was learnt of it starts anew.") { what, words, config };
        command.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!,
            new ControlRequest("changed", parsed.GetValue(what)!, string.Join(' ', parsed.GetValue(words) ?? []))));
        return command;
    }

    private static Command Note()
    {
        var config = ConfigurationFile.Option();
        var words = Words(isNeeded: true);
        var command = new Command("note", "Writes a note into the record.") { words, config };
        command.SetAction((parsed, _) => AskDaemon.ActAsync(
            parsed.GetValue(config)!, new ControlRequest("note", "", string.Join(' ', parsed.GetValue(words) ?? []))));
        return command;
    }

    private static Argument<string[]> Words(bool isNeeded) => new("TEXT")
    {
        Description = "Words.", Arity = isNeeded ? ArgumentArity.OneOrMore : ArgumentArity.ZeroOrMore,
    };
}
