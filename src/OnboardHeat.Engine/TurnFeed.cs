using System.Collections.Immutable;
using System.Threading.Channels;

namespace OnboardHeat.Engine;

/// <summary>
/// Hands each turn to every output over a bounded queue of its own. Publishing never waits: a slow output loses its
/// oldest turns and is told how many, and cannot slow the loop or another output.
/// </summary>
public sealed class TurnFeed
{
    private ImmutableArray<TurnQueue> _queues = [];

    /// <summary>A new queue that keeps the newest <paramref name="capacity"/> turns.</summary>
    public TurnQueue Subscribe(string name, int capacity)
    {
        var queue = new TurnQueue(name, capacity);
        ImmutableInterlocked.Update(ref _queues, (all, added) => all.Add(added), queue);
        return queue;
    }

    /// <summary>Ends a queue.</summary>
    public void Unsubscribe(TurnQueue queue)
    {
        ArgumentNullException.ThrowIfNull(queue);
        ImmutableInterlocked.Update(ref _queues, (all, gone) => all.Remove(gone), queue);
        queue.Complete();
    }

    /// <summary>Gives a turn to all queues; never waits and never throws.</summary>
    public void Publish(Turn turn)
    {
        foreach (var queue in _queues)
        {
            queue.Add(turn);
        }
    }

    /// <summary>Ends all queues: readers finish what is left and stop.</summary>
    public void Complete()
    {
        foreach (var queue in _queues)
        {
            queue.Complete();
        }
    }
}
