using OnboardHeat.Engine;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History.Backup;
using OnboardHeat.History.Disk;
using OnboardHeat.History.Files;
using OnboardHeat.History.ReadBack;

namespace OnboardHeat.History;

/// <summary>
/// Writes turns to the record. It never holds anything up: turns wait in their queue, closed minutes in a bounded ring,
/// and whatever the card does happens on the owner's thread. Where the card fails, recording pauses, says so to the
/// house, and goes on by itself.
/// </summary>
public sealed class Recorder : IAsyncDisposable
{
    /// <summary>Turns that may wait while a month is checked at start: half an hour of two-second scans.</summary>
    public const int QueueCapacity = 1000;

    /// <summary>
    /// Files looked through after the start, the newest apart, which is looked through before it is written.
    /// </summary>
    private const int OlderFilesChecked = 2;

    private static readonly TimeSpan s_firstRetry = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan s_longestRetry = TimeSpan.FromSeconds(60);

    /// <summary>
    /// A card that takes longer than this for one write is told of; a healthy one takes well under a second.
    /// </summary>
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(10);

    /// <summary>The service manager waits ten seconds at the end; the flush leaves it half.</summary>
    private static readonly TimeSpan s_lastFlush = TimeSpan.FromSeconds(5);

    private readonly Func<IRecordDisk> _disk;
    private readonly RecordLimits _limits;
    private readonly TurnQueue _turns;
    private readonly HouseStatus _house;
    private readonly TimeProvider _time;
    private readonly Action<string> _say;
    private readonly OwnerThread _owner = new();
    private readonly DraftRing _ring = new();
    private readonly MinuteBuilder _builder = new();
    private readonly RecordDesk _desk;
    private Task<bool> _writing = Task.FromResult(true);
    private long _writingSince;
    private TimeSpan _retryAfter;
    private long? _failedAt;
    private bool _isFirstOpening = true;
    private volatile bool _isWaiting;
    private int? _highestRunBefore;
    private int? _runShift;
    private long _droppedTold;

    /// <summary>A recorder into a folder.</summary>
    /// <param name="folder">Folder of the record; made when it is missing.</param>
    /// <param name="keepMonths">Months to keep; 1 or more.</param>
    /// <param name="turns">Its queue of turns.</param>
    /// <param name="house">Where it says how it fares.</param>
    /// <param name="time">Clock for back-off.</param>
    /// <param name="say">Takes one clear line for the log.</param>
    public Recorder(string folder, int keepMonths, TurnQueue turns, HouseStatus house, TimeProvider time,
        Action<string> say)
        : this(() => new CardFolder(folder), RecordLimits.Default with { KeepMonths = keepMonths }, turns, house, time,
            say)
    {
    }

    internal Recorder(
        Func<IRecordDisk> disk, RecordLimits limits, TurnQueue turns, HouseStatus house, TimeProvider time,
        Action<string> say)
    {
        _disk = disk;
        _limits = limits;
        _turns = turns;
        _house = house;
        _time = time;
        _say = say;
        _desk = new RecordDesk(_owner, time);
        Reader = new RecordReader(_desk);
        Queue = new RecordQueue(_desk);
        Vault = new RecordVault(_desk);
    }

    /// <summary>Reads the record back.</summary>
    public IRecordReader Reader { get; }

    /// <summary>The record as a queue for receivers.</summary>
    public IRecordQueue Queue { get; }

    /// <summary>Backs the record up and restores months, while it is being written.</summary>
    public IRecordVault Vault { get; }

    /// <summary>Records until the turns end, then flushes what is left. Never throws for what a card does.</summary>
    public async Task RunAsync()
    {
        StartWriting();
        while (await MoreAsync())
        {
            while (_turns.Reader.TryRead(out var turn))
            {
                NoteDropped();
                if (_builder.Add(turn) is { } draft)
                {
                    _ring.Add(draft);
                }
            }

            Pump();
        }

        if (_builder.Close() is { } rest)
        {
            _ring.Add(rest);
        }

        await FinishAsync();
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        _desk.Dispose();
        _owner.Dispose();
        return ValueTask.CompletedTask;
    }

    /// <summary>Waits until what was started is done (for tests, which step the clock themselves).</summary>
    internal Task SettleAsync() => _writing;

    /// <summary>Whether it waits for turns and nothing is being written (for tests).</summary>
    internal bool IsIdle => _turns.Reader.Count == 0 && _isWaiting && _writing.IsCompleted;

    /// <summary>
    /// Turns that were lost because this queue was full are told in the record, before the turn that follows them.
    /// </summary>
    private void NoteDropped()
    {
        var dropped = _turns.Dropped;
        if (dropped > _droppedTold)
        {
            _builder.NoteGap(dropped - _droppedTold);
            _droppedTold = dropped;
        }
    }

    private async Task<bool> MoreAsync()
    {
        _isWaiting = true;
        var isMore = await _turns.Reader.WaitToReadAsync();
        _isWaiting = false;
        return isMore;
    }

    private void Pump()
    {
        if (!_writing.IsCompleted)
        {
            if (_time.GetElapsedTime(_writingSince) > s_patience)
            {
                _house.SetHistoryStopped("the card does not answer");
            }

            return;
        }

        var isDue = _failedAt is not { } failed || _time.GetElapsedTime(failed) >= _retryAfter;
        if (isDue && (_ring.Count > 0 || _failedAt is not null))
        {
            StartWriting();
        }
    }

    private void StartWriting()
    {
        _writingSince = _time.GetTimestamp();
        _writing = _owner.Ask(Write);
    }

    private async Task FinishAsync()
    {
        try
        {
            await _writing.WaitAsync(s_lastFlush, _time);
            StartWriting();
            if (!await _writing.WaitAsync(s_lastFlush, _time))
            {
                // The record was closed by the failure; a fresh opening may write what waits. There is no later.
                StartWriting();
                await _writing.WaitAsync(s_lastFlush, _time);
            }

            await _owner.Ask(Close).WaitAsync(s_lastFlush, _time);
        }
        catch (TimeoutException)
        {
            _say("history: the card does not answer, the last minutes are not on record");
        }
    }

    /// <summary>On the owner's thread: opens the record where it is not open, and writes what waits.</summary>
    private bool Write()
    {
        try
        {
            var book = _desk.Book ?? Open();
            while (_ring.Peek(out var lost) is { } draft)
            {
                var run = draft.Header.Run + ShiftFor(draft.Header.Run);
                book.Append(draft with { Header = draft.Header with { Run = run } });
                _ring.Done(draft, lost);
            }

            book.Tidy();
            _failedAt = null;
            _retryAfter = TimeSpan.Zero;
            _house.SetHistoryStopped("");
            _desk.Written();
            return true;
        }
        catch (Exception e) when (FileCheck.IsEngineTrouble(e) || e is UnauthorizedAccessException)
        {
            Fail(e);
            return false;
        }
    }

    private RecordBook Open()
    {
        var book = new RecordBook(_disk(), _limits);
        foreach (var damage in book.Damage)
        {
            Tell(damage);
        }

        book.Damage.Clear();
        if (_isFirstOpening)
        {
            _isFirstOpening = false;
            CheckOlder(book);
        }

        _highestRunBefore ??= book.Shelf.HighestRun;
        _desk.Book = book;
        return book;
    }

    /// <summary>
    /// Run numbers come from the small file of what was learnt. If that was lost they begin anew; on record they never
    /// do.
    /// </summary>
    private int ShiftFor(int firstRun) =>
        _runShift ??= firstRun <= _highestRunBefore ? _highestRunBefore.Value + 1 - firstRun : 0;

    private void CheckOlder(RecordBook book)
    {
        foreach (var name in book.Shelf.Names.Reverse().Skip(1).Take(OlderFilesChecked))
        {
            _ = _owner.Ask(() =>
            {
                if (ReferenceEquals(_desk.Book, book))
                {
                    book.CheckOlder(name);
                    book.Damage.ForEach(Tell);
                    book.Damage.Clear();
                    book.Shelf.LetGo();
                }

                return true;
            });
        }
    }

    private void Tell(string damage)
    {
        _say($"history: {damage}");
        _house.AddHistoryDamage(damage);
    }

    private void Fail(Exception e)
    {
        Drop();
        var isFirst = _failedAt is null;
        _failedAt = _time.GetTimestamp();
        _retryAfter = isFirst ? s_firstRetry
            : TimeSpan.FromTicks(Math.Min(_retryAfter.Ticks * 2, s_longestRetry.Ticks));
        _house.SetHistoryStopped(e.Message);
        if (isFirst)
        {
            _say($"history: recording has stopped: {e.Message}; the last hours are kept, warnings go on");
        }
    }

    private void Drop()
    {
        try
        {
            _desk.Book?.Dispose();
        }
        catch (Exception e) when (FileCheck.IsEngineTrouble(e))
        {
            // It failed already; what was acknowledged is on the card.
        }

        _desk.Book = null;
    }

    private bool Close()
    {
        try
        {
            _desk.Book?.Close();
        }
        catch (Exception e) when (FileCheck.IsEngineTrouble(e))
        {
            _say($"history: the end could not be written: {e.Message}");
        }

        Drop();
        return true;
    }
}
