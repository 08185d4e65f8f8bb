namespace OnboardHeat.Core.Scans;

/// <summary>One action of a person.</summary>
/// <param name="Kind">What was done.</param>
/// <param name="Target">
/// What it concerns: for acknowledge and shelve an alarm as <c>alarm</c> or <c>alarm/subject</c> (empty: all that
/// sound); for changed one of <c>hoses</c>, <c>insulation</c>, <c>coil</c>, <c>probe</c>, <c>coolant</c>,
/// <c>probe/channel</c>, or <c>nothing</c> (an answer after works); else empty.
/// </param>
/// <param name="Text">The words of a note, or what was written beside a change mark; may be empty.</param>
public readonly record struct PersonAction(ActionKind Kind, string Target, string Text)
{
    private static readonly string[] s_names =
    [
        "acknowledge", "shelve", "works-begin", "works-end", "drained", "filled", "repaired", "changed", "note", "test",
    ];

    /// <summary>Whether it marks a change of the van; that nothing was changed is an answer and no mark.</summary>
    public bool IsChangeMark => Kind == ActionKind.Changed && Target != "nothing";

    /// <summary>The name of the action in recordings, topics and commands.</summary>
    public static string NameOf(ActionKind kind) => s_names[(int)kind];

    /// <summary>
    /// Reads <c>kind</c>, <c>kind:target</c> or <c>kind:target:text</c>, the form of a recording's action column.
    /// </summary>
    public static bool TryParse(ReadOnlySpan<char> written, out PersonAction action)
    {
        var colon = written.IndexOf(':');
        var name = colon < 0 ? written : written[..colon];
        var rest = colon < 0 ? default : written[(colon + 1)..];
        for (var i = 0; i < s_names.Length; i++)
        {
            if (!name.SequenceEqual(s_names[i]))
            {
                continue;
            }

            var kind = (ActionKind)i;
            var split = kind == ActionKind.Note ? -1 : rest.IndexOf(':');
            action = kind == ActionKind.Note
                ? new PersonAction(kind, "", rest.ToString())
                : new PersonAction(
                    kind, (split < 0 ? rest : rest[..split]).ToString(),
                    split < 0 ? "" : rest[(split + 1)..].ToString());
            return true;
        }

        action = default;
        return false;
    }

    /// <summary>The written form that <see cref="TryParse"/> reads.</summary>
    public override string ToString() => (Kind, Target, Text) switch
    {
        (ActionKind.Note, _, _) => $"{NameOf(Kind)}:{Text}",
        (_, "", "") => NameOf(Kind),
        (_, _, "") => $"{NameOf(Kind)}:{Target}",
        _ => $"{NameOf(Kind)}:{Target}:{Text}",
    };
}
