using OnboardHeat.History.Files;

namespace OnboardHeat.History.ReadBack;

/// <summary>
/// Where readers ask: each question is answered on the owner's thread, in small pieces, so that recording goes on
/// between them. While the record is not open (the card failed) there is nothing to read.
/// </summary>
internal sealed class RecordDesk : IDisposable
{
    /// <summary>After the last question of a reader the memory of what was looked at is given back.</summary>
    private static readonly TimeSpan s_rest = TimeSpan.FromSeconds(2);

    private readonly OwnerThread _owner;
    private readonly ITimer _rest;
    private TaskCompletionSource _written = NewSignal();

    public RecordDesk(OwnerThread owner, TimeProvider time)
    {
        _owner = owner;
        _rest = time.CreateTimer(_ => LetGo(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>The open record; null while there is none. Owner thread only.</summary>
    public RecordBook? Book { get; set; }

    /// <summary>Completes when something more was written.</summary>
    public Task NextWrite => Volatile.Read(ref _written).Task;

    /// <summary>Asks the shelf.</summary>
    public Task<T> Ask<T>(Func<RecordBook, T> question, T whenClosed) => _owner.Ask(() =>
    {
        if (Book is not { } book)
        {
            return whenClosed;
        }

        var answer = question(book);
        if (book.Shelf.HasLooked)
        {
            _rest.Change(s_rest, Timeout.InfiniteTimeSpan);
        }

        return answer;
    });

    /// <summary>Tells whoever waits for more.</summary>
    public void Written() => Interlocked.Exchange(ref _written, NewSignal()).TrySetResult();

    public void Dispose() => _rest.Dispose();

    private void LetGo() => _ = _owner.Ask(() =>
    {
        Book?.Shelf.LetGo();
        return true;
    });

    private static TaskCompletionSource NewSignal() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
