using System.Threading.Channels;

namespace OnboardHeat.Engine.Judging;

/// <summary>Wakes the judging loop: a timer, a finished reading, an action, an engine that starts. Many calls before one wait are one.</summary>
public sealed class LoopWake
{
    private readonly Channel<bool> _calls = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite, SingleReader = true });
    private int _wantsScan;

    /// <summary>The loop turns as soon as it can.</summary>
    public void Call() => _calls.Writer.TryWrite(true);

    /// <summary>The same, and the next scan is due at once: something happened that should be judged now.</summary>
    public void CallForScan()
    {
        Volatile.Write(ref _wantsScan, 1);
        Call();
    }

    /// <summary>Whether somebody wants a scan at once; asking takes the wish back.</summary>
    internal bool TakeScanWish() => Interlocked.Exchange(ref _wantsScan, 0) == 1;

    internal ValueTask<bool> WaitAsync(CancellationToken cancellationToken) => _calls.Reader.ReadAsync(cancellationToken);
}
