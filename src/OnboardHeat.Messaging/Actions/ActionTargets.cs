using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;

namespace OnboardHeat.Messaging.Actions;

/// <summary>What the target of an action may be: refused here with a reason, where the core would silently do nothing.</summary>
internal static class ActionTargets
{
    private static readonly string[] s_changes = ["hoses", "insulation", "coil", "probe", "coolant"];

    /// <summary>What is wrong with the target; null when it is in order.</summary>
    public static string? ProblemOf(ActionKind kind, string target) => kind switch
    {
        ActionKind.Acknowledge => target.Length == 0 || AlarmOf(target) is not null ? null : "target is no alarm",
        ActionKind.Shelve => AlarmOf(target) switch
        {
            null => "target is no alarm",
            { Priority: AlarmPriority.Critical } => "a critical alarm cannot be shelved",
            _ => null,
        },
        ActionKind.Changed => IsChange(target) ? null : "target is none of hoses, insulation, coil, probe, probe/channel, coolant",
        _ => target.Length == 0 ? null : "this action has no target",
    };

    private static AlarmDefinition? AlarmOf(string target) => AlarmTable.Find(target.AsSpan(0, End(target)));

    private static bool IsChange(string target)
    {
        var end = End(target);
        return s_changes.Contains(target[..end])
            && (end == target.Length || (target[..end] == "probe" && Channels.TryParse(target.AsSpan(end + 1), out _)));
    }

    private static int End(string target) => target.IndexOf('/') is var slash and >= 0 ? slash : target.Length;
}
