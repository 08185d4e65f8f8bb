using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>
/// Where readers ask: each question is answered on the owner's thread, in small pieces, so that recording goes on
/// between them. While the record is not open (the card failed) there is nothing to read.
/// </summary>
internal sealed class RecordDesk(OwnerThread owner)
{
    private TaskCompletionSource _written = NewSignal();

    /// <summary>The open record; null while there is none. Owner thread only.</summary>
    public RecordBook? Book { get; set; }

    /// <summary>Completes when something more was written.</summary>
    public Task NextWrite => Volatile.Read(ref _written).Task;

    /// <summary>Asks the shelf.</summary>
    public Task<T> Ask<T>(Func<RecordBook, T> question, T whenClosed) =>
        owner.Ask(() => Book is { } book ? question(book) : whenClosed);

    /// <summary>Tells whoever waits for more.</summary>
    public void Written() => Interlocked.Exchange(ref _written, NewSignal()).TrySetResult();

    private static TaskCompletionSource NewSignal() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
