namespace OnboardHeat.Core.Watch;

/// <summary>Water at the top of the tank, which is what the tap gives, can scald.</summary>
internal sealed class ScaldRiskWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>
    /// Told from here (two minutes to a burn), and no longer below there: one heating and one cooling a day, no
    /// chatter.
    /// </summary>
    private const double OnCelsius = 51, OffCelsius = 46;

    private static readonly string[] s_whatToDo =
    [
        "Mix cold water in before anybody steps under; try it with the hand.",
        "A thermostatic mixing valve at the tap, set to 41 °C or less for a shower, is the cure; "
            + "have it fitted as local codes ask.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.ScaldRisk);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        CanJudge = input.CanJudgeTank;
        if (CanJudge != true)
        {
            return;
        }

        var top = input.Tank.TopCelsius.Value;
        var holds = input.HoldsKnownWater && top >= (_point.IsPresent ? OffCelsius : OnCelsius);
        if (_point.Observe(holds, input.Scan.ElapsedS))
        {
            _point.Say(
                FormattableString.Invariant($"water at the top is {top:0.0} °C: ")
                    + $"at that an adult's skin burns in about {ScaldTable.TimeAt(top)}",
                s_whatToDo);
        }
    }
}
