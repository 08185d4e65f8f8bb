namespace OnboardHeat.Daemon.Replay;

/// <summary>
/// When a status line is due: at the first scan at or after each multiple of a span from a run's first row.
/// </summary>
internal sealed class StatusPace(double? everyS)
{
    private double _beganS;
    private double _nextS;

    /// <summary>A run begins; its first row is the multiple zero.</summary>
    public void Begin(double elapsedS)
    {
        _beganS = elapsedS;
        _nextS = 0;
    }

    /// <summary>Whether a line is due now. Multiples that a gap has swallowed are skipped.</summary>
    public bool IsDue(double elapsedS)
    {
        var sinceS = elapsedS - _beganS;
        if (everyS is not { } spanS || sinceS < _nextS)
        {
            return false;
        }

        _nextS = (Math.Floor(sinceS / spanS) + 1) * spanS;
        return true;
    }
}
