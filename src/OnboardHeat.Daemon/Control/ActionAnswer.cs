using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Daemon.Control;

/// <summary>Takes an action from the control socket to the judging loop, and answers with what stands after it was judged.</summary>
internal sealed class ActionAnswer(RunningVan van)
{
    /// <summary>Longest words of a note or beside a change mark.</summary>
    public const int WordsMax = 500;

    private static readonly string[] s_changes = ["hoses", "insulation", "coil", "probe", "coolant"];

    /// <summary>The answer, or null when the request is no action.</summary>
    public async Task<ControlReply?> AnswerAsync(ControlRequest request, CancellationToken cancellationToken)
    {
        if (!PersonAction.TryParse(request.Command, out var named) || request.Command != PersonAction.NameOf(named.Kind))
        {
            return null;
        }

        var action = new PersonAction(named.Kind, request.Target, request.Text);
        if (ProblemOf(action) is { } problem)
        {
            return ControlReply.Refused(problem);
        }

        var judged = van.Latest.WaitForAsync(turn => turn.Scan.Actions.Contains(action), cancellationToken);
        if (!van.Inbox.Offer(action))
        {
            return ControlReply.Refused("too many actions wait; try again in a moment");
        }

        return ControlReply.Done([.. Standing(await judged.ConfigureAwait(false))]);
    }

    /// <summary>What is wrong with an action; null when it can be taken.</summary>
    public static string? ProblemOf(PersonAction action)
    {
        if (action.Text.Length > WordsMax || action.Text.Any(char.IsControl) || action.Target.Any(char.IsControl))
        {
            return $"words are one line of at most {WordsMax} characters";
        }

        var slash = action.Target.IndexOf('/');
        var name = slash < 0 ? action.Target : action.Target[..slash];
        return action.Kind switch
        {
            ActionKind.Shelve when name.Length == 0 => "shelve takes the name of an alarm",
            ActionKind.Shelve when AlarmTable.Find(name) is { Priority: AlarmPriority.Critical } =>
                $"{name} is critical and cannot be shelved; works mode is the way to quiet the circuit's watchers",
            ActionKind.Acknowledge or ActionKind.Shelve when name.Length > 0 && AlarmTable.Find(name) is null => $"there is no alarm '{name}'",
            ActionKind.Changed when !s_changes.Contains(name) => $"changed takes one of {string.Join(", ", s_changes)}",
            ActionKind.Changed when slash >= 0 && !Channels.TryParse(action.Target.AsSpan(slash + 1), out _) =>
                $"there is no channel '{action.Target[(slash + 1)..]}'",
            ActionKind.Note when action.Text.Length == 0 => "a note needs words",
            _ => null,
        };
    }

    private static IEnumerable<string> Standing(Turn turn)
    {
        yield return turn.Picture.IsInWorks ? "done; works are under way, the circuit is not watched" : "done";
        foreach (var alarm in turn.Picture.Alarms)
        {
            yield return $"{alarm.Path}: {PublicNames.Of(alarm.State)}: {alarm.Because}";
        }
    }
}
