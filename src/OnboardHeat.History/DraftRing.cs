using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Blocks;

namespace OnboardHeat.History;

/// <summary>
/// Closed minutes on their way to the card. While it cannot be written the newest hours wait here, in bounded memory;
/// what had to be dropped is told in the record itself, by a mark in the minute that follows.
/// </summary>
internal sealed class DraftRing
{
    /// <summary>More than a day of driving at a minute a draft, in a few megabytes at most.</summary>
    public const int MostDrafts = 2000;

    /// <summary>What waits takes no more memory than this, whatever the minutes hold.</summary>
    public const int MostBytes = 3 << 20;

    private readonly Lock _lock = new();
    private readonly LinkedList<MinuteDraft> _waiting = [];
    private int _bytes;
    private int _lost;

    public int Count
    {
        get
        {
            lock (_lock)
            {
                return _waiting.Count;
            }
        }
    }

    public void Add(MinuteDraft draft)
    {
        lock (_lock)
        {
            _waiting.AddLast(draft);
            _bytes += draft.Bytes;
            while (_waiting.Count > MostDrafts || (_bytes > MostBytes && _waiting.Count > 1))
            {
                _bytes -= _waiting.First!.Value.Bytes;
                _waiting.RemoveFirst();
                _lost++;
            }
        }
    }

    /// <summary>
    /// The oldest that waits, with a mark in it where some before it were lost; null when none waits.
    /// </summary>
    public MinuteDraft? Peek(out int lost)
    {
        lock (_lock)
        {
            lost = _lost;
            return _waiting.First?.Value is { } oldest && _lost > 0 ? WithMark(oldest, _lost) : _waiting.First?.Value;
        }
    }

    /// <summary>The oldest is on the card (if it was not dropped meanwhile).</summary>
    public void Done(MinuteDraft written, int lostToldOf)
    {
        lock (_lock)
        {
            _lost -= lostToldOf;
            if (_waiting.First?.Value is { } oldest && ReferenceEquals(oldest.Scans, written.Scans))
            {
                _bytes -= oldest.Bytes;
                _waiting.RemoveFirst();
            }
            else
            {
                // It was dropped while it was being written: it is on record after all.
                _lost = Math.Max(0, _lost - 1);
            }
        }
    }

    private static MinuteDraft WithMark(MinuteDraft draft, int lost)
    {
        var header = draft.Header;
        var mark = new RecordedEvent(
            header.Run, header.First, null, "mark", "history-gap", "",
            $"{lost} blocks before this were lost while recording was stopped");
        return draft with { Entries = [new Entry(header.First, mark, null), .. draft.Entries] };
    }
}
