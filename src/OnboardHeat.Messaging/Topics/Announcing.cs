namespace OnboardHeat.Messaging.Topics;

/// <summary>
/// How often things are said. Each message expires at the broker after three of its periods: two may be lost, and what
/// nobody renews (power cut, hung daemon) is forgotten by the broker itself instead of standing there as if it were
/// true.
/// </summary>
internal static class Announcing
{
    /// <summary>Periods after which the broker forgets a message that was not renewed.</summary>
    public const int PeriodsToExpiry = 3;

    /// <summary>A plain value is said at least this often, changed or not.</summary>
    public static readonly TimeSpan ValuePeriod = TimeSpan.FromMinutes(1);

    /// <summary>
    /// A whole picture, some 2 KB, is said this often when nothing of weight changes: 17 MB a day at most over a
    /// phone's data.
    /// </summary>
    public static readonly TimeSpan PicturePeriod = TimeSpan.FromSeconds(10);

    /// <summary>
    /// An alarm is said on change; unchanged it is renewed this seldom, so that whoever rings a bell at each message is
    /// spared.
    /// </summary>
    public static readonly TimeSpan AlarmPeriod = TimeSpan.FromMinutes(10);

    /// <summary>A standing alarm whose figures move (minutes left) is said anew no more often than this.</summary>
    public static readonly TimeSpan WordsPeriod = TimeSpan.FromSeconds(10);

    /// <summary>A moment stands for the 30 s in which an action may quote it, so it is renewed well within.</summary>
    public static readonly TimeSpan MomentPeriod = TimeSpan.FromSeconds(10);

    /// <summary>
    /// Longest wait for a turn before <c>alive</c> goes to no, in scan periods: as the watchdog counts a late scan.
    /// </summary>
    public const int ScanPeriodsToSilence = 3;
}
