namespace OnboardHeat.Glance.Live;

/// <summary>
/// The newest picture as bytes, made once for all pages, and a signal when a newer one is there. A page that reads
/// slowly skips pictures; it never makes a queue.
/// </summary>
internal sealed class LivePages(TimeProvider time)
{
    /// <summary>More pages than a van has eyes; the next one is told so.</summary>
    public const int MostPages = 16;

    private volatile TaskCompletionSource _newer = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile byte[]? _latest;
    private long _shownAt;
    private int _open;

    /// <summary>Pages open now.</summary>
    public int Open => Volatile.Read(ref _open);

    /// <summary>The newest picture; null before the first.</summary>
    public byte[]? Latest => _latest;

    /// <summary>How old the newest picture is; null before the first.</summary>
    public TimeSpan? Age => _latest is null ? null : time.GetElapsedTime(Volatile.Read(ref _shownAt));

    /// <summary>
    /// Ends when a newer picture than the one last read is there. Take it before reading <see cref="Latest"/>.
    /// </summary>
    public Task Newer => _newer.Task;

    /// <summary>Shows a picture to all pages.</summary>
    public void Show(byte[] picture)
    {
        Volatile.Write(ref _shownAt, time.GetTimestamp());
        _latest = picture;
        var waiting = Interlocked.Exchange(
            ref _newer, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        waiting.TrySetResult();
    }

    /// <summary>A place for one more page; false when all are taken.</summary>
    public bool TryEnter()
    {
        if (Interlocked.Increment(ref _open) <= MostPages)
        {
            return true;
        }

        Interlocked.Decrement(ref _open);
        return false;
    }

    /// <summary>Gives a place back.</summary>
    public void Leave() => Interlocked.Decrement(ref _open);
}
