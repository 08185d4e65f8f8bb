namespace OnboardHeat.Outputs.Sounding;

/// <summary>
/// Makes orders out of presses. A short press acknowledges at once; what changes the state of the van needs a row of
/// presses that nobody makes by accident.
/// </summary>
internal sealed class PressSequence
{
    /// <summary>A pause longer than this begins a new row: twice what it takes to press again with a glove.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    private int _shorts;
    private TimeSpan _endedAt = TimeSpan.MinValue;

    /// <summary>Takes a press at the moment at which it was told.</summary>
    public ButtonOrder After(Press press, TimeSpan now)
    {
        switch (press)
        {
            case Press.Short:
                _shorts = IsSameRow(now) ? _shorts + 1 : 1;
                _endedAt = now;
                return _shorts == 1 ? ButtonOrder.Acknowledge : ButtonOrder.None;
            case Press.Long:
                var shorts = IsSameRow(now - PressJudge.LongAfter) ? _shorts : 0;
                _shorts = 0;
                return shorts switch
                {
                    <= 1 => ButtonOrder.Test,
                    2 => ButtonOrder.Drained,
                    3 => ButtonOrder.Works,
                    _ => ButtonOrder.None,
                };
            case Press.Stuck:
                _shorts = 0;
                return ButtonOrder.Stuck;
            default:
                return ButtonOrder.None;
        }
    }

    private bool IsSameRow(TimeSpan began) => _shorts > 0 && began - _endedAt <= Pause;
}
