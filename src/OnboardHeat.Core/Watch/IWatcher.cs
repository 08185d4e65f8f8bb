namespace OnboardHeat.Core.Watch;

/// <summary>
/// One thing to watch for. A watcher holds its alarm points, looks at every scan, and allocates nothing in a quiet one.
/// Without the readings it needs it says 'cannot judge' and never 'all well'. It asks the board for its points when it
/// is made, so that what was kept over a restart finds them.
/// </summary>
internal interface IWatcher
{
    /// <summary>
    /// What it watches for, as <c>check</c> and <c>cannot-judge</c> name it: the name of its first alarm.
    /// </summary>
    string Name { get; }

    /// <summary>
    /// Whether it can judge with the readings of the last scan; null where the van lacks the probes for it.
    /// </summary>
    bool? CanJudge { get; }

    /// <summary>Looks at a scan.</summary>
    void Observe(WatchInput input);
}
