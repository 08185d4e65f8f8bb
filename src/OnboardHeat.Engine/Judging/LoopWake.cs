using System.Threading.Channels;

namespace OnboardHeat.Engine.Judging;

/// <summary>
/// Wakes the judging loop: a timer, a finished reading, an action, an engine that starts. Many calls before one wait
/// are one.
/// </summary>
public sealed class LoopWake
{
    private readonly Channel<bool> _calls = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite, SingleReader = true });
    private int _wantsScan;
    private long _called;
    private long _heard;
    private long _hearing;

    /// <summary>The loop turns as soon as it can.</summary>
    public void Call()
    {
        Interlocked.Increment(ref _called);
        _calls.Writer.TryWrite(true);
    }

    /// <summary>The same, and the next scan is due at once: something happened that should be judged now.</summary>
    public void CallForScan()
    {
        Volatile.Write(ref _wantsScan, 1);
        Call();
    }

    /// <summary>Whether somebody wants a scan at once; asking takes the wish back.</summary>
    internal bool TakeScanWish() => Interlocked.Exchange(ref _wantsScan, 0) == 1;

    /// <summary>
    /// Whether every call so far was heard: the loop has nothing left to do until somebody calls again.
    /// </summary>
    internal bool IsQuiet => Volatile.Read(ref _heard) == Volatile.Read(ref _called);

    /// <summary>Waits for a call. What comes before the turn begins is heard by it.</summary>
    internal async ValueTask WaitAsync(CancellationToken cancellationToken)
    {
        await _calls.Reader.ReadAsync(cancellationToken).ConfigureAwait(false);
        _hearing = Volatile.Read(ref _called);
    }

    /// <summary>The turn for the last call is over.</summary>
    internal void Heard() => Volatile.Write(ref _heard, _hearing);
}
