using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Scans;

/// <summary>
/// One look at all probes and signals, with the actions of people since the last one. Everything that judges takes its
/// time from here. A source may reuse one instance: whoever keeps a scan copies it.
/// </summary>
public sealed class Scan
{
    private readonly Reading[] _readings = new Reading[Channels.Count];
    private readonly sbyte[] _signals = new sbyte[Signals.Count];

    /// <summary>An empty scan: no readings, no signals, no actions.</summary>
    public Scan() => Clear();

    /// <summary>Number of the run (a start of the daemon); 1 or more. Elapsed time starts anew with each.</summary>
    public int Run { get; set; } = 1;

    /// <summary>
    /// Monotonic time since the run began; not negative, rising from scan to scan. The only time that rates and delays
    /// use.
    /// </summary>
    public TimeSpan Elapsed { get; set; }

    /// <summary>Wall-clock time, a label; null where the recording has none.</summary>
    public DateTimeOffset? Utc { get; set; }

    /// <summary>Whether the wall clock was known to be right (a Pi has none of its own after a power cut).</summary>
    public bool IsUtcTrusted { get; set; }

    /// <summary>Actions of people since the last scan, in their order; usually empty.</summary>
    public IReadOnlyList<PersonAction> Actions { get; set; } = [];

    /// <summary>How the daemon itself fares: record and supply.</summary>
    public HouseReport House { get; set; } = HouseReport.Well;

    /// <summary>The reading of a channel; a fault <see cref="ReadingFault.Missing"/> where there is none.</summary>
    public Reading this[Channel channel]
    {
        get => _readings[(int)channel];
        set => _readings[(int)channel] = value;
    }

    /// <summary>A signal's level; null where it is not fitted or could not be read.</summary>
    public bool? this[Signal signal]
    {
        get => _signals[(int)signal] < 0 ? null : _signals[(int)signal] == 1;
        set => _signals[(int)signal] = value is { } level ? (sbyte)(level ? 1 : 0) : (sbyte)-1;
    }

    /// <summary>Takes back every reading, signal, action and report; time stays.</summary>
    public void Clear()
    {
        Array.Fill(_readings, Reading.None);
        Array.Fill(_signals, (sbyte)-1);
        Actions = [];
        House = HouseReport.Well;
    }

    /// <summary>A copy that the source cannot change any more.</summary>
    public Scan Copy()
    {
        var copy = new Scan
        {
            Run = Run,
            Elapsed = Elapsed,
            Utc = Utc,
            IsUtcTrusted = IsUtcTrusted,
            Actions = Actions,
            House = House,
        };
        _readings.CopyTo(copy._readings, 0);
        _signals.CopyTo(copy._signals, 0);
        return copy;
    }
}
