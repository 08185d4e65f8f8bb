using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// The electric element is on while the tank is drained: it burns out, and may set fire to what is near.
/// </summary>
internal sealed class ElementDryWatcher(AlarmBoard board) : IWatcher
{
    private static readonly string[] s_whatToDo =
    [
        "Switch the element off at once.",
        "Fill and bleed the tank before it is switched on again; leave mains work to a licensed electrician.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.ElementDry);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var isOn = input.Scan[Signal.ElementOn];
        CanJudge = input.Van.Fitted.Has(Signal.ElementOn) ? isOn is not null : null;
        if (isOn is { } on && _point.Observe(on && input.IsDrained, input.Scan.ElapsedS))
        {
            _point.Say("the electric element is on and the tank was drained", s_whatToDo);
        }
    }
}
