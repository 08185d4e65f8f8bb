namespace OnboardHeat.Core.Watch;

/// <summary>
/// The coil gives much less than this van's own normal: air, a kinked hose, a valve half closed, scale.
/// </summary>
internal sealed class WeakHeatingWatcher(AlarmBoard board, LearntVan learnt) : IWatcher
{
    /// <summary>Share of the normal conductance below which it is weak, and above which it is well again.</summary>
    private const double WeakShare = 0.6, WellShare = 0.75;

    /// <summary>Spells that make a normal.</summary>
    private const int LeastSpells = 3;

    private static readonly string[] s_whatToDo =
    [
        "When stopped and cool: look for a valve half closed, a kinked hose, a low coolant level.",
        "Bleed the heater circuit as the vehicle's manual says; never open a hot cap.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.WeakHeating);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        var coil = input.Tank.CoilWPerK;
        CanJudge = learnt.Circuit.CoilWPerK is { Count: >= LeastSpells } && input.Van.Fitted.HasTankProbe
            ? input.Tank.IsKnown : null;
        if (CanJudge != true || learnt.Circuit.CoilWPerK is not { } normal)
        {
            return;
        }

        var highest = coil.Value + coil.Deviation;
        var holds = input.Tank.IsHeatedByCoil && highest < normal.Value * (_point.IsPresent ? WellShare : WeakShare);
        if (_point.Observe(holds, input.Scan.ElapsedS))
        {
            _point.Say(
                FormattableString.Invariant(
                    $"the coil passes about {coil.Value:0} W/K, this van's normal is {normal.Value:0} W/K"),
                s_whatToDo);
        }
    }
}
