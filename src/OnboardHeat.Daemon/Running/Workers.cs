using Microsoft.Extensions.Logging;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Awaits every worker. One that ends before it was asked to ends the daemon with exit 70, and the service manager
/// starts it anew: a part that is silently gone would be worse than a restart.
/// </summary>
internal sealed class Workers(ILogger log, TimeProvider time)
{
    private readonly List<Worker> _workers = [];

    public void Add(string name, Task running) => _workers.Add(new Worker(name, running));

    /// <summary>Waits until somebody asks for the end or a worker ends by itself. True when it was asked for.</summary>
    public async Task<bool> WaitAsync(CancellationToken stopping)
    {
        var asked = new TaskCompletionSource();
        using var registration = stopping.Register(
            static state => ((TaskCompletionSource)state!).TrySetResult(), asked);
        var first = await Task.WhenAny(_workers.Select(worker => worker.Running).Append(asked.Task))
            .ConfigureAwait(false);
        if (stopping.IsCancellationRequested)
        {
            return true;
        }

        var gone = _workers.First(worker => worker.Running == first);
        Log.EndedUnasked(log, gone.Name, first.Exception?.GetBaseException());
        return false;
    }

    /// <summary>
    /// Gives all workers until the deadline to flush and end, and names those that do not. Once the first one has
    /// ended,
    /// <paramref name="then"/> ends what lives on what it leaves.
    /// </summary>
    public async Task EndAsync(TimeSpan deadline, string first, Action then)
    {
        using var inTime = new CancellationTokenSource();
        var late = Task.Delay(deadline, time, inTime.Token);
        await Task.WhenAny(_workers.First(worker => worker.Name == first).Running, late).ConfigureAwait(false);
        then();
        await Task.WhenAny(Task.WhenAll(_workers.Select(worker => worker.Running)), late).ConfigureAwait(false);
        await inTime.CancelAsync().ConfigureAwait(false);
        foreach (var worker in _workers)
        {
            if (!worker.Running.IsCompleted)
            {
                Log.NotEnded(log, worker.Name, deadline.TotalSeconds);
            }
            else if (worker.Running is { IsFaulted: true, Exception: { } bug })
            {
                Log.FailedWhileEnding(log, worker.Name, bug.GetBaseException());
            }
        }
    }
}
