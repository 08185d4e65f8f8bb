using OnboardHeat.Core;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Keeping;

/// <summary>
/// Writes the small file beside the judging loop, so that the loop waits for no disk. Only the newest state counts. A
/// disk that refuses is told once, tried again each minute, and told again when it takes.
/// </summary>
public sealed class StateSaver : IStateKeeper
{
    /// <summary>A full or read-only disk does not get better by asking often.</summary>
    public static readonly TimeSpan RetryEvery = TimeSpan.FromMinutes(1);

    private readonly Lock _gate = new();
    private readonly LoopWake _wake = new();
    private readonly KeptFile _file;
    private readonly TimeProvider _time;
    private KeptFileContent _newest;
    private bool _isDirty = true;
    private bool _isWriting;
    private bool _isComplete;
    private TaskCompletionSource? _awaited;
    private string? _trouble;

    /// <summary>A saver that begins with what is to be written first: the new run's number.</summary>
    public StateSaver(KeptFile file, KeptFileContent first, TimeProvider time)
    {
        _file = file;
        _newest = first;
        _time = time;
    }

    /// <summary>Told why the disk refuses, and null once it takes again.</summary>
    public Action<string?> Tell { get; init; } = static _ => { };

    /// <summary>What would be written now.</summary>
    public KeptFileContent Newest
    {
        get
        {
            lock (_gate)
            {
                return _newest;
            }
        }
    }

    /// <inheritdoc/>
    public void Offer(KeptState state) => Change(content => content with { State = state });

    /// <summary>Changes anything of the content; soon on the disk.</summary>
    public void Change(Func<KeptFileContent, KeptFileContent> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        lock (_gate)
        {
            _newest = change(_newest);
            _isDirty = true;
        }

        _wake.Call();
    }

    /// <summary>Completes once everything offered so far is on the disk, or the disk has refused it.</summary>
    public Task SavedAsync()
    {
        lock (_gate)
        {
            return _isDirty || _isWriting
                ? (_awaited ??= new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously)).Task
                : Task.CompletedTask;
        }
    }

    /// <summary>Nothing comes any more: what is unwritten is written and <see cref="RunAsync"/> ends.</summary>
    public void Complete()
    {
        lock (_gate)
        {
            _isComplete = true;
        }

        _wake.Call();
    }

    /// <summary>Writes until <see cref="Complete"/>.</summary>
    public async Task RunAsync()
    {
        using var retry = _time.CreateTimer(
            static wake => ((LoopWake)wake!).Call(), _wake, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        // The first write must not hold up whoever starts us.
        await Task.Yield();
        while (true)
        {
            var isLast = Write();
            if (isLast)
            {
                return;
            }

            if (_trouble is not null)
            {
                retry.Change(RetryEvery, Timeout.InfiniteTimeSpan);
            }

            await _wake.WaitAsync(CancellationToken.None).ConfigureAwait(false);
        }
    }

    private bool Write()
    {
        KeptFileContent? content;
        bool isLast;
        lock (_gate)
        {
            content = _isDirty ? _newest : null;
            isLast = _isComplete;
            _isDirty = false;
            _isWriting = content is not null;
        }

        if (content is not null)
        {
            Written(TryWrite(content));
        }

        return isLast;
    }

    private bool TryWrite(KeptFileContent content)
    {
        try
        {
            _file.Write(content);
            Told(null);
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Told(fault.Message);
            return false;
        }
    }

    private void Written(bool isWell)
    {
        lock (_gate)
        {
            _isWriting = false;
            var isOver = !isWell || !_isDirty;
            _isDirty |= !isWell;
            if (isOver)
            {
                _awaited?.SetResult();
                _awaited = null;
            }
        }
    }

    private void Told(string? trouble)
    {
        if (trouble != _trouble)
        {
            _trouble = trouble;
            Tell(trouble);
        }
    }
}
