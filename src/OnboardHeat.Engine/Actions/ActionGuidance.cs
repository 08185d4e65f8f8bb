using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Actions;

/// <summary>What to mind when something was said: general guidance, shown with the answer.</summary>
public static class ActionGuidance
{
    private static readonly string[] s_drained =
    [
        "Element off at its own switch, pump off: a dry element burns out, and is told as element-dry.",
        "Drain below 40 °C only; lowest drain first, then every tap, the highest first, and leave them open.",
        "Lift the safety valve until nothing comes; empty the pump's filter bowl and the sags of pipes.",
        "The coolant circuit stays closed: never open a hot coolant cap. Order and cautions: hardware-notes/winter.md.",
    ];

    private static readonly string[] s_filled =
    [
        "Drains closed, taps open until water comes without air, the hot side last.",
        "The element is to be switched on only when water has come out of the hot tap.",
    ];

    private static readonly string[] s_worksBegin =
    [
        "Never open a hot coolant cap or joint: it is under pressure. Let it cool until you can hold it.",
        "Coolant is poisonous to people and animals: catch it. 'onboardheat works' tells what the lines do.",
    ];

    /// <summary>Sentences, in their order; empty where there is nothing to mind.</summary>
    public static IReadOnlyList<string> For(ActionKind kind) => kind switch
    {
        ActionKind.Drained => s_drained,
        ActionKind.Filled => s_filled,
        ActionKind.WorksBegin => s_worksBegin,
        _ => [],
    };
}
