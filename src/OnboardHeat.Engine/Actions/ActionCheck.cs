using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Engine.Actions;

/// <summary>
/// What is wrong with an action, in words for whoever asked: the core would silently do nothing. The same for the
/// command line, the page and the broker.
/// </summary>
public static class ActionCheck
{
    /// <summary>Longest words of a note or beside a change mark, characters.</summary>
    public const int WordsMax = 500;

    /// <summary>What can be changed in a van, and the answer that nothing was.</summary>
    private static readonly string[] s_changes = ["hoses", "insulation", "coil", "probe", "coolant", "nothing"];

    /// <summary>What is wrong with it whatever stands; null when it is in order.</summary>
    public static string? ProblemOf(PersonAction action)
    {
        if (action.Text.Length > WordsMax || action.Text.Any(char.IsControl) || action.Target.Any(char.IsControl))
        {
            return $"words are one line of at most {WordsMax} characters";
        }

        return action.Kind switch
        {
            ActionKind.Shelve => ShelveProblemOf(action.Target),
            ActionKind.Acknowledge => action.Target.Length == 0 ? null : AlarmProblemOf(action.Target),
            ActionKind.Changed => ChangeProblemOf(action.Target),
            ActionKind.Note when action.Text.Length == 0 => "a note needs words",
            _ => action.Target.Length == 0 ? null : $"{PersonAction.NameOf(action.Kind)} has no target",
        };
    }

    /// <summary>
    /// Why it would do nothing as things stand; null when it does something, or when nothing is known yet.
    /// </summary>
    public static string? IdleBecause(PersonAction action, Picture? picture) => (action.Kind, picture) switch
    {
        (_, null) => null,
        (ActionKind.WorksBegin, { IsInWorks: true }) =>
            FormattableString.Invariant(
                $"works are under way already, for {picture.Works.AgeS / 60:0} min: nothing was begun anew"),
        (ActionKind.WorksEnd, { IsInWorks: false }) => "no works are under way: there is nothing to end",
        (ActionKind.Acknowledge, _) when !picture.Alarms.Any(alarm => IsMeant(alarm, action.Target)) =>
            action.Target.Length == 0
                ? "nothing stands that could be acknowledged"
                : $"{action.Target} does not stand: what was not raised cannot be acknowledged in advance",
        _ => null,
    };

    private static bool IsMeant(AlarmSnapshot alarm, string target) =>
        alarm.State != AlarmState.OutOfService
        && (target.Length == 0 || alarm.Path == target || alarm.Definition.Name == target);

    private static string? ShelveProblemOf(string target) => target.Length == 0
        ? "shelve takes the name of an alarm"
        : AlarmTable.Find(NameIn(target)) is { Priority: AlarmPriority.Critical } critical
            ? $"{critical.Name} is critical and cannot be shelved; only works mode quiets the circuit's watchers"
            : AlarmProblemOf(target);

    private static string? AlarmProblemOf(string target) =>
        AlarmTable.Find(NameIn(target)) is null ? $"there is no alarm '{NameIn(target)}'" : null;

    private static string? ChangeProblemOf(string target)
    {
        var name = NameIn(target);
        if (!s_changes.Contains(name) || (name != "probe" && name != target))
        {
            return $"changed takes one of {string.Join(", ", s_changes)}, or probe/CHANNEL";
        }

        return name == target || Channels.TryParse(target.AsSpan(name.Length + 1), out _)
            ? null
            : $"there is no channel '{target[(name.Length + 1)..]}'";
    }

    private static string NameIn(string target) => target.IndexOf('/') is var slash and >= 0 ? target[..slash] : target;
}
