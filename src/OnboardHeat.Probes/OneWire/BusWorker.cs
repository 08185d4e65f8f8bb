namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// A thread that makes one blocking call at a time for somebody who may not wait for ever. It carries its results in a
/// task that nobody has to await: a call that never comes back holds this thread and nothing else.
/// </summary>
internal sealed class BusWorker<T> : IDisposable
{
    /// <summary>
    /// A reader needs little: 64 of them must not fill a small board (a runtime thread takes 1.5 MB of address space
    /// else).
    /// </summary>
    private const int StackBytes = 256 * 1024;

    private readonly SemaphoreSlim _work = new(0);
    private readonly Func<T> _call;
    private TaskCompletionSource<T>? _wanted;
    private volatile bool _isDismissed;

    public BusWorker(string name, Func<T> call)
    {
        _call = call;
        var thread = new Thread(Work, StackBytes) { IsBackground = true, Name = name };
        thread.Start();
    }

    /// <summary>Whether the last call has not come back.</summary>
    public bool IsBusy => _wanted is { Task.IsCompleted: false };

    /// <summary>Asks for one call. Only when not <see cref="IsBusy"/>.</summary>
    public Task<T> Ask()
    {
        var wanted = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        _wanted = wanted;
        _work.Release();
        return wanted.Task;
    }

    /// <summary>Lets the thread end, at once or whenever its call comes back.</summary>
    public void Dispose()
    {
        _isDismissed = true;
        _work.Release();
    }

    private void Work()
    {
        while (true)
        {
            _work.Wait();
            if (_isDismissed)
            {
                return;
            }

            try
            {
                _wanted!.SetResult(_call());
            }
            catch (Exception bug)
            {
                // The bus names its faults, so this is a bug: it reaches whoever waits for the answer.
                _wanted!.SetException(bug);
            }
        }
    }
}
