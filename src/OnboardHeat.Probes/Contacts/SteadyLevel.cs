namespace OnboardHeat.Probes.Contacts;

/// <summary>
/// A contact's level with its bounce taken out: a new level counts once it has stood for <see cref="StandsFor"/>. The
/// first level counts at once, because there is nothing to compare it with and the judging should not start blind.
/// </summary>
internal sealed class SteadyLevel
{
    /// <summary>
    /// Relay and switch contacts bounce for a few milliseconds, a level switch in moving coolant for tens (common
    /// practice, no source).
    /// </summary>
    public static readonly TimeSpan StandsFor = TimeSpan.FromMilliseconds(50);

    private bool _pending;
    private TimeSpan _pendingSince;

    /// <summary>The steady level; null before the first look.</summary>
    public bool? Level { get; private set; }

    /// <summary>Whether a new level has yet to prove itself.</summary>
    public bool IsPending { get; private set; }

    /// <summary>Takes a look at the line. True when the steady level has changed.</summary>
    public bool Observe(bool level, TimeSpan now)
    {
        if (Level is null)
        {
            Level = level;
            return false;
        }

        if (level == Level)
        {
            IsPending = false;
            return false;
        }

        if (!IsPending || _pending != level)
        {
            IsPending = true;
            _pending = level;
            _pendingSince = now;
            return false;
        }

        if (now - _pendingSince < StandsFor)
        {
            return false;
        }

        Level = level;
        IsPending = false;
        return true;
    }

    /// <summary>The line was seen to change: whatever was pending starts anew.</summary>
    public void Bounce() => IsPending = false;

    /// <summary>The line is gone; the next look starts anew.</summary>
    public void Forget()
    {
        Level = null;
        IsPending = false;
    }
}
