using System.Collections.Concurrent;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine;

/// <summary>A bounded inbox: a person never has more than a few actions waiting, a flood is refused.</summary>
/// <param name="wake">
/// Woken by an action, so that it is judged at once and not with the next scan of a parked van; null in a replay.
/// </param>
public sealed class ActionInbox(LoopWake? wake = null) : IActionInbox
{
    /// <summary>More waiting actions than a person can cause between two scans.</summary>
    public const int Capacity = 64;

    private readonly ConcurrentQueue<PersonAction> _waiting = new();

    /// <inheritdoc/>
    public bool Offer(PersonAction action)
    {
        if (_waiting.Count >= Capacity)
        {
            return false;
        }

        _waiting.Enqueue(action);
        wake?.CallForScan();
        return true;
    }

    /// <summary>Takes all that wait, in their order; the shared empty list when none do.</summary>
    public IReadOnlyList<PersonAction> TakeAll()
    {
        if (_waiting.IsEmpty)
        {
            return [];
        }

        var taken = new List<PersonAction>();
        while (taken.Count < Capacity && _waiting.TryDequeue(out var action))
        {
            taken.Add(action);
        }

        return taken;
    }
}
