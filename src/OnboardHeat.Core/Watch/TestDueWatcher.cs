namespace OnboardHeat.Core.Watch;

/// <summary>
/// Asks once a month for a test of lamp and buzzer: nothing else can tell that a buzzer is heard. Only where the van
/// has them, and only by a clock that is known to be right.
/// </summary>
internal sealed class TestDueWatcher(AlarmBoard board) : IWatcher
{
    /// <summary>A month (owner's rule).</summary>
    public const double MonthDays = 31;

    private static readonly string[] s_whatToDo =
    [
        "Hold the button for three seconds, or say 'onboardheat test': the lamp lights and the buzzer sounds.",
        "If either stays out, see to it: the next warning would too.",
    ];

    private readonly AlarmPoint _point = board.Point(AlarmKind.TestDue);

    public string Name => _point.Definition.Name;

    /// <summary>It needs no probe; without a lamp or a buzzer there is nothing to ask for.</summary>
    public bool? CanJudge { get; private set; } = true;

    public void Observe(WatchInput input)
    {
        if (!input.Van.HasLampOrBuzzer)
        {
            return;
        }

        CanJudge = input.DaysSinceTest is not null;
        if (input.DaysSinceTest is { } days && _point.Observe(days >= MonthDays, input.Scan.ElapsedS))
        {
            _point.Say(
                FormattableString.Invariant($"lamp and buzzer have not been tested for {days:0} days"), s_whatToDo);
        }
    }
}
