using System.Collections.Concurrent;

namespace OnboardHeat.History;

/// <summary>
/// The one thread that touches the database engine: its concurrency has open faults, and a lazy query on another thread
/// is one of them. Work is handed in and done in order.
/// </summary>
internal sealed class OwnerThread : IDisposable
{
    private readonly BlockingCollection<Action> _work = [];
    private readonly Thread _thread;

    public OwnerThread()
    {
        _thread = new Thread(Run) { Name = "record", IsBackground = true };
        _thread.Start();
    }

    /// <summary>Does it on the owner's thread; its result or exception comes back to whoever awaits.</summary>
    public Task<T> Ask<T>(Func<T> work)
    {
        var answer = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        try
        {
            _work.Add(() => Answer(work, answer));
        }
        catch (InvalidOperationException)
        {
            answer.SetException(new ObjectDisposedException(nameof(OwnerThread)));
        }

        return answer.Task;
    }

    /// <summary>Takes no more work; what was handed in is still done.</summary>
    public void Dispose() => _work.CompleteAdding();

    private static void Answer<T>(Func<T> work, TaskCompletionSource<T> answer)
    {
        try
        {
            answer.SetResult(work());
        }
        catch (Exception e)
        {
            answer.SetException(e);
        }
    }

    private void Run()
    {
        foreach (var work in _work.GetConsumingEnumerable())
        {
            work();
        }

        _work.Dispose();
    }
}
