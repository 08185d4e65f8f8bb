using System.Collections.Concurrent;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine;

/// <summary>A bounded inbox: a person never has more than a few actions waiting, a flood is refused.</summary>
public sealed class ActionInbox : IActionInbox
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
