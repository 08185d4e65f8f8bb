using OnboardHeat.Engine;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>
/// The newest turn, over all sessions. What a broker missed while it was away is in the record; here only the newest
/// counts.
/// </summary>
internal sealed class NewestTurn(TurnQueue turns, TimeProvider time)
{
    private Task<bool>? _more;
    private long _cameAt;

    public Turn? Turn { get; private set; }

    /// <summary>Whether the feed has ended: the daemon stops.</summary>
    public bool HasEnded => _more is { IsCompletedSuccessfully: true, Result: false };

    /// <summary>Time since it came.</summary>
    public TimeSpan Age => time.GetElapsedTime(_cameAt);

    /// <summary>
    /// Completes when there is another, or none will come. One wait stands at a time, across sessions.
    /// </summary>
    public Task MoreAsync() => _more ??= turns.Reader.WaitToReadAsync(CancellationToken.None).AsTask();

    /// <summary>Takes what has come; true when there was any.</summary>
    public bool Take()
    {
        var hasCome = false;
        while (turns.Reader.TryRead(out var turn))
        {
            Turn = turn;
            hasCome = true;
        }

        if (hasCome)
        {
            _cameAt = time.GetTimestamp();
        }

        if (_more is { IsCompletedSuccessfully: true, Result: true })
        {
            _more = null;
        }

        return hasCome;
    }
}
