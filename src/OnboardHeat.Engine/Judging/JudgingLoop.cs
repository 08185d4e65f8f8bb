using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Judging;

/// <summary>
/// The one loop that judges. It turns at least every five seconds whether or not a scan is due, starts a scan when one
/// is due, judges it when it is there, publishes the turn, and feeds the watchdog itself: only a loop that really
/// turns, and whose scans really come, does. It waits for no disk and no network.
/// </summary>
public sealed class JudgingLoop : IDisposable
{
    /// <summary>
    /// The longest the loop rests: under the five seconds that were promised, and well under a watchdog of 20 s.
    /// </summary>
    public static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(4);

    /// <summary>A due scan this many periods late is no slow bus but a hang: the feeding stops.</summary>
    public const int PeriodsLate = 3;

    /// <summary>
    /// What was learnt moves slowly: losing five minutes of it costs nothing, and the card is spared.
    /// </summary>
    public static readonly TimeSpan KeepEvery = TimeSpan.FromMinutes(5);

    private readonly LoopInputs _inputs;
    private readonly Monitor _monitor;
    private readonly RunClock _clock;
    private readonly LoopWake _wake;
    private readonly LoopOutputs _outputs;
    private readonly ScanPace _pace;
    private readonly ITimer _alarmClock;
    private readonly Scan _scan = new();
    private Task? _reading;
    private TimeSpan _due;
    private TimeSpan _keptAt;
    private bool _isReady;
    private long _turns;

    /// <summary>A loop over one run.</summary>
    public JudgingLoop(
        LoopInputs inputs, Monitor monitor, RunClock clock, LoopWake wake, LoopOutputs outputs, ScanPeriods periods,
        TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        _inputs = inputs;
        _monitor = monitor;
        _clock = clock;
        _wake = wake;
        _outputs = outputs;
        _pace = new ScanPace(periods);
        _alarmClock = time.CreateTimer(
            static state => ((LoopWake)state!).Call(), wake, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>How often the loop has turned, for tests that must see it turn without feeding.</summary>
    internal long Turns => Volatile.Read(ref _turns);

    /// <summary>Runs before each turn, for a test that hangs the loop.</summary>
    internal Action? BeforeTurn { get; set; }

    /// <summary>
    /// Judges until asked to stop; then keeps the state a last time and ends the feed. Anything thrown is a bug.
    /// </summary>
    public async Task RunAsync(CancellationToken stopping)
    {
        try
        {
            while (!stopping.IsCancellationRequested)
            {
                await TurnAsync(stopping).ConfigureAwait(false);
                _alarmClock.Change(RestUntilNext(), Timeout.InfiniteTimeSpan);
                _wake.Heard();
                await _wake.WaitAsync(stopping).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // Asked to stop: what follows is the end everybody wanted.
        }

        _outputs.Keeper.Offer(_monitor.Keep());
        _outputs.Feed.Complete();
    }

    /// <inheritdoc/>
    public void Dispose() => _alarmClock.Dispose();

    private async Task TurnAsync(CancellationToken stopping)
    {
        BeforeTurn?.Invoke();
        if (_reading is { IsCompleted: true } ended)
        {
            _reading = null;
            await ended.ConfigureAwait(false);
            Judge();
        }

        if (_wake.TakeScanWish() && _clock.Elapsed < _due)
        {
            _due = _clock.Elapsed;
        }

        if (_reading is null && _clock.Elapsed >= _due)
        {
            Start(stopping);
        }

        if (_clock.Elapsed - _due < _pace.Period * PeriodsLate)
        {
            _outputs.Notifier.FeedWatchdog();
        }

        Volatile.Write(ref _turns, _turns + 1);
    }

    private void Start(CancellationToken stopping)
    {
        _scan.Clear();
        _scan.Run = _clock.Run;
        // A scan carries the time at which it began: that is as regular as the period, however long a failing probe
        // holds it up.
        _scan.Elapsed = _clock.Elapsed;
        _scan.Utc = _clock.Utc;
        _scan.IsUtcTrusted = _clock.IsUtcTrusted;
        _reading = _inputs.Source.ReadAsync(_scan, stopping);
        _ = _reading.ContinueWith(
            static (_, wake) => ((LoopWake)wake!).Call(), _wake, CancellationToken.None,
            TaskContinuationOptions.ExecuteSynchronously,
            TaskScheduler.Default);
    }

    private void Judge()
    {
        _scan.Actions = _inputs.Inbox.TakeAll();
        _scan.House = _inputs.House.Current;
        var picture = _monitor.Observe(_scan);
        _pace.Observe(_scan, IsCritical(picture));
        // No bursts to catch up: what was missed is past.
        _due = TimeSpan.FromTicks(
            Math.Max((_due + _pace.Period).Ticks, _scan.Elapsed.Ticks + TimeSpan.TicksPerMillisecond));
        if (picture.Changes.Count > 0 || _scan.Actions.Count > 0 || _scan.Elapsed - _keptAt >= KeepEvery)
        {
            _keptAt = _scan.Elapsed;
            _outputs.Keeper.Offer(_monitor.Keep());
        }

        // After the state was handed over: whoever answers a person when the turn is out may wait for it to be on the
        // disk.
        _outputs.Feed.Publish(new Turn(_scan.Copy(), picture));
        if (!_isReady)
        {
            _isReady = true;
            _outputs.Notifier.Ready();
        }
    }

    private TimeSpan RestUntilNext()
    {
        if (_reading is not null)
        {
            return LongestRest;
        }

        var left = _due - _clock.Elapsed;
        return left > LongestRest ? LongestRest : left > TimeSpan.Zero ? left : TimeSpan.Zero;
    }

    private static bool IsCritical(Picture picture) =>
        picture.Alarms.Count > 0 && picture.Alarms[0].Definition.Priority == AlarmPriority.Critical;
}
