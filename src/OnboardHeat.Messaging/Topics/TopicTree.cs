using OnboardHeat.Core.Scans;

namespace OnboardHeat.Messaging.Topics;

/// <summary>Full names of all topics of one van. <c>config/asyncapi.yaml</c> describes every one of them.</summary>
internal sealed class TopicTree(string vanId)
{
    public string Root { get; } = $"onboardheat/{vanId}/";

    public string Alive => Root + "alive";

    public string Picture => Root + "picture";

    public string Record => Root + "record";

    public string Moment => Root + "moment";

    /// <summary>Filter for everything that people may ask for; a further level would be no action.</summary>
    public string ActionFilter => Root + "actions/+";

    public string Value(string name) => Root + name;

    /// <summary>
    /// Topic of an alarm. A subject is the owner's own word, so what would change the shape of the tree is taken out of
    /// it.
    /// </summary>
    public string Alarm(string name, string subject) =>
        subject.Length == 0 ? $"{Root}alarms/{name}" : $"{Root}alarms/{name}/{Tame(subject)}";

    public string Action(ActionKind kind) => $"{Root}actions/{PersonAction.NameOf(kind)}";

    /// <summary>The action that a topic names; null for a name that is none.</summary>
    public ActionKind? ActionOf(string topic)
    {
        foreach (var kind in Enum.GetValues<ActionKind>())
        {
            if (topic == Action(kind))
            {
                return kind;
            }
        }

        return null;
    }

    private static string Tame(string subject) =>
        subject.AsSpan().IndexOfAny("/+#\0") < 0 ? subject
            : subject.Replace('/', '-').Replace('+', '-').Replace('#', '-').Replace('\0', '-');
}
