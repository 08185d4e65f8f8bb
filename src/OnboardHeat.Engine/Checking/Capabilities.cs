using OnboardHeat.Core;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Checking;

/// <summary>
/// What can and cannot be judged with what is fitted, and what one more would add. Nothing of it is written down
/// anywhere: the monitor itself is asked, once as the van is and once for each place that is still free, so the answer
/// cannot fall behind the watchers.
/// </summary>
public sealed class Capabilities
{
    private readonly VanDescription _van;
    private readonly KeptState _learnt;
    private readonly HashSet<string> _unjudged;

    /// <summary>The capabilities of a van, with what was learnt of it.</summary>
    public Capabilities(VanDescription van, LearntVan learnt)
    {
        ArgumentNullException.ThrowIfNull(van);
        _van = van;
        _learnt = KeptState.Fresh with { Learnt = learnt };
        var statuses = Watching(van.Fitted);
        _unjudged = Unjudged(statuses);
        Judged = [.. statuses.Where(
            watcher => watcher.CanJudge is not null).Select(watcher => watcher.Watcher).Distinct().Except(_unjudged)];
        Additions = [.. Free().Select(place => new Addition(place, Gains(place)))];
        Lacks = [.. _unjudged.Select(watcher => new Lack(watcher, NeededFor(watcher)))];
    }

    /// <summary>The watchers that have the probes they need.</summary>
    public IReadOnlyList<string> Judged { get; }

    /// <summary>The watchers that have not, and what would help.</summary>
    public IReadOnlyList<Lack> Lacks { get; }

    /// <summary>What one more probe or contact would let be judged.</summary>
    public IReadOnlyList<Addition> Additions { get; }

    private IReadOnlyList<Core.Watch.WatcherStatus> Watching(FittedSet fitted) =>
        new Monitor(_van with { Fitted = fitted }, _learnt, ForecastTiming.WhenAsked).Observe(new Scan()).Watching;

    /// <summary>A watcher of parts is unjudged as long as one of its parts has no probe.</summary>
    private static HashSet<string> Unjudged(IEnumerable<Core.Watch.WatcherStatus> statuses) =>
        [.. statuses.Where(watcher => watcher.CanJudge is null).Select(watcher => watcher.Watcher)];

    private IReadOnlyList<string> Gains(params IReadOnlyList<string> places)
    {
        var still = Unjudged(Watching(With(places)));
        return [.. _unjudged.Where(watcher => !still.Contains(watcher))];
    }

    /// <summary>The smallest sets of one or two places that would let it be judged; empty when no two would.</summary>
    private IReadOnlyList<string> NeededFor(string watcher)
    {
        var one = Additions.Where(
            addition => addition.Watchers.Contains(watcher)).Select(addition => addition.Place).ToList();
        if (one.Count > 0)
        {
            return one;
        }

        var free = Free().ToList();
        return
        [
            .. from first in free.Index()
               from second in free.Skip(first.Index + 1)
               where Gains(first.Item, second).Contains(watcher)
               select $"{first.Item} with {second}",
        ];
    }

    private IEnumerable<string> Free()
    {
        foreach (var channel in Channels.All.ToArray().Where(channel => !_van.Fitted.Has(channel)))
        {
            yield return Channels.NameOf(channel);
        }

        foreach (var signal in Signals.All.ToArray().Where(signal => !_van.Fitted.Has(signal)))
        {
            yield return Signals.NameOf(signal);
        }
    }

    private FittedSet With(IReadOnlyList<string> places)
    {
        var channels = Channels.All.ToArray().Where(c => _van.Fitted.Has(c) || places.Contains(Channels.NameOf(c)));
        var signals = Signals.All.ToArray().Where(s => _van.Fitted.Has(s) || places.Contains(Signals.NameOf(s)));
        return new FittedSet(channels, signals);
    }
}
