using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Water stood long in the range in which legionella multiply since the whole tank was last above 60 °C.
/// </summary>
internal sealed class HygieneDueWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>Hours in the range after which it is told (three days; common practice, no source).</summary>
    private const double DueS = 72 * 3600;

    private static readonly string[] s_whatToDo =
    [
        "Heat the whole tank above 60 °C, or drain it and fill it anew; flush the pipes to the taps.",
        "These are facts of time and temperature, no finding about the water; follow local guidance.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.HygieneDue);

    public string Name => _point.Definition.Name;

    public bool? CanJudge { get; private set; }

    public void Observe(WatchInput input)
    {
        CanJudge = input.CanJudgeTank;
        if (CanJudge != true)
        {
            return;
        }

        HygieneFacts facts = input.Tank.Hygiene;
        if (_point.Observe(input.HoldsKnownWater && facts.InGrowthRangeS >= DueS, input.Scan.ElapsedS))
        {
            var hot = facts.SinceHotS is { } sinceS
                ? FormattableString.Invariant($"{sinceS / 3600:0} h ago")
                : "not in this run";
            _point.Say(
                FormattableString.Invariant(
                    $"{facts.InGrowthRangeS / 3600:0} h between 20 and 45 °C; the whole tank last above 60 °C: {hot}"),
                s_whatToDo);
        }
    }
}
