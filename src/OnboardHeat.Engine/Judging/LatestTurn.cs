namespace OnboardHeat.Engine.Judging;

/// <summary>The newest turn, for whoever asks now and then, and the next one that fits, for whoever waits.</summary>
public sealed class LatestTurn(TurnQueue turns)
{
    private readonly Lock _gate = new();
    private readonly List<Wish> _wishes = [];

    /// <summary>The newest turn; null before the first.</summary>
    public Turn? Newest { get; private set; }

    /// <summary>Reads turns until the feed ends.</summary>
    public async Task RunAsync()
    {
        await foreach (var turn in turns.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            Take(turn);
        }
    }

    /// <summary>The first turn from now on that fits.</summary>
    public Task<Turn> WaitForAsync(Predicate<Turn> fits, CancellationToken cancellationToken)
    {
        var wish = new Wish(fits, new TaskCompletionSource<Turn>(TaskCreationOptions.RunContinuationsAsynchronously));
        lock (_gate)
        {
            _wishes.Add(wish);
        }

        return WaitAsync(wish, cancellationToken);
    }

    private async Task<Turn> WaitAsync(Wish wish, CancellationToken cancellationToken)
    {
        try
        {
            return await wish.Turn.Task.WaitAsync(cancellationToken).ConfigureAwait(false);
        }
        finally
        {
            lock (_gate)
            {
                _wishes.Remove(wish);
            }
        }
    }

    private void Take(Turn turn)
    {
        lock (_gate)
        {
            Newest = turn;
            foreach (var wish in _wishes)
            {
                if (wish.Fits(turn))
                {
                    wish.Turn.TrySetResult(turn);
                }
            }
        }
    }

    private sealed record Wish(Predicate<Turn> Fits, TaskCompletionSource<Turn> Turn);
}
