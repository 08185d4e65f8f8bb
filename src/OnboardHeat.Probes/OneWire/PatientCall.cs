namespace OnboardHeat.Probes.OneWire;

/// <summary>
/// A blocking call with patience: it answers in time or not at all. While a call hangs, later ones are answered at once
/// with nothing; a call that hangs for long is set aside with its thread and a fresh thread tries again, as often as
/// the bound allows. So a bus that hangs costs a few idle threads, and a probe that was replaced under a hung read
/// comes back.
/// </summary>
internal sealed class PatientCall<T>(string name, Func<T> call, TimeSpan patience, TimeProvider time) : IDisposable
{
    /// <summary>Hung threads a call may leave behind before it only waits for one of them.</summary>
    public const int SetAsideMax = 4;

    /// <summary>How long a hung call keeps its thread before another one tries.</summary>
    public static readonly TimeSpan SetAsideAfter = TimeSpan.FromSeconds(10);

    private readonly List<BusWorker<T>> _setAside = [];
    private BusWorker<T>? _worker;
    private long _askedAt;

    /// <summary>Threads that hang and were given up.</summary>
    public int SetAside => _setAside.Count;

    /// <summary>Makes the call; <paramref name="otherwise"/> when it does not come back in time.</summary>
    public async Task<T> AskAsync(T otherwise)
    {
        _setAside.RemoveAll(static worker => !worker.IsBusy);
        if (_worker is { IsBusy: true } hung)
        {
            if (time.GetElapsedTime(_askedAt) < SetAsideAfter || _setAside.Count >= SetAsideMax)
            {
                return otherwise;
            }

            hung.Dispose();
            _setAside.Add(hung);
            _worker = null;
        }

        _worker ??= new BusWorker<T>(name, call);
        _askedAt = time.GetTimestamp();
        var answer = _worker.Ask();
        using var inTime = new CancellationTokenSource();
        var first = await Task.WhenAny(answer, Task.Delay(patience, time, inTime.Token)).ConfigureAwait(false);
        await inTime.CancelAsync().ConfigureAwait(false);
        return first == answer ? await answer.ConfigureAwait(false) : otherwise;
    }

    public void Dispose() => _worker?.Dispose();
}
