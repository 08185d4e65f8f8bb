namespace OnboardHeat.Core.Watch;

/// <summary>The list of who can judge, made anew only when it has changed.</summary>
internal sealed class WatchList
{
    private WatcherStatus[] _statuses = [];

    /// <summary>The list as it stands after the watchers have looked at a scan.</summary>
    public IReadOnlyList<WatcherStatus> After(IWatcher[] watchers)
    {
        if (!IsCurrent(watchers))
        {
            _statuses = [.. watchers.Select(w => new WatcherStatus(w.Name, w.CanJudge))];
        }

        return _statuses;
    }

    private bool IsCurrent(IWatcher[] watchers)
    {
        if (_statuses.Length != watchers.Length)
        {
            return false;
        }

        for (var i = 0; i < watchers.Length; i++)
        {
            if (_statuses[i].CanJudge != watchers[i].CanJudge)
            {
                return false;
            }
        }

        return true;
    }
}
