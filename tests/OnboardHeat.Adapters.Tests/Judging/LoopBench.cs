using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Adapters.Tests.Judging;

/// <summary>
/// A judging loop on a bench: a source that does as it is told, a watchdog that counts, and a clock that the test
/// moves.
/// </summary>
internal sealed class LoopBench : IScanSource, IServiceNotifier, IStateKeeper, IUtcTrust, IAsyncDisposable
{
    private static readonly TimeSpan s_step = TimeSpan.FromMilliseconds(500);

    private readonly CancellationTokenSource _stop = new();
    private readonly List<TaskCompletionSource> _held = [];
    private int _fed;
    private int _scans;

    public LoopBench(double drivingS = 2, double parkedS = 30)
    {
        Wake = new LoopWake();
        Inbox = new ActionInbox(Wake);
        var van = new VanDescription
        {
            Fitted = new FittedSet([Channel.TankTop, Channel.Flow], [Signal.EngineRunning]),
        };
        Loop = new JudgingLoop(
            new LoopInputs(this, Inbox, House),
            new Monitor(van, KeptState.Fresh),
            new RunClock(7, Time, this),
            Wake,
            new LoopOutputs(Feed, this, this),
            new ScanPeriods(TimeSpan.FromSeconds(drivingS), TimeSpan.FromSeconds(parkedS)),
            Time);
        Turns = Feed.Subscribe("test", 1000);
    }

    public SteppedWallClock Time { get; } = new(new DateTimeOffset(2026, 5, 30, 6, 0, 0, TimeSpan.Zero));

    public LoopWake Wake { get; }

    public ActionInbox Inbox { get; }

    public HouseStatus House { get; } = new();

    public TurnFeed Feed { get; } = new();

    public TurnQueue Turns { get; }

    public JudgingLoop Loop { get; }

    public Task Running { get; private set; } = Task.CompletedTask;

    /// <summary>What the source gives.</summary>
    public double FlowC { get; set; } = 20;

    public bool? Engine { get; set; } = true;

    /// <summary>From now on a reading never ends.</summary>
    public bool Holds { get; set; }

    public Exception? Throws { get; set; }

    public bool IsTrusted { get; set; }

    public int Fed => Volatile.Read(ref _fed);

    public int Scans => Volatile.Read(ref _scans);

    public bool IsReady { get; private set; }

    public List<KeptState> Kept { get; } = [];

    public void Start() => Running = Loop.RunAsync(_stop.Token);

    public async Task StopAsync()
    {
        await _stop.CancelAsync();
        await Running;
    }

    /// <summary>Lets time pass in steps of half a second; after each the loop comes to rest before the next.</summary>
    public async Task PassAsync(double seconds)
    {
        await RestAsync();
        for (var passed = TimeSpan.Zero; passed < TimeSpan.FromSeconds(seconds); passed += s_step)
        {
            Time.Advance(s_step);
            await RestAsync();
        }
    }

    public Task ReadAsync(Scan scan, CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref _scans);
        if (Throws is { } bug)
        {
            throw bug;
        }

        scan[Channel.TankTop] = Reading.Of(50);
        scan[Channel.Flow] = Reading.Of(FlowC);
        scan[Signal.EngineRunning] = Engine;
        if (!Holds)
        {
            return Task.CompletedTask;
        }

        var held = new TaskCompletionSource();
        _held.Add(held);
        return held.Task;
    }

    public void Ready() => IsReady = true;

    public void FeedWatchdog() => Interlocked.Increment(ref _fed);

    public void Stopping()
    {
    }

    public void Offer(KeptState state) => Kept.Add(state);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _held.ForEach(held => held.TrySetResult());
        await Task.WhenAny(Running);
        Loop.Dispose();
        _stop.Dispose();
    }

    /// <summary>
    /// The loop rests once it waits with nothing to wake it; only then does the test's clock move on.
    /// </summary>
    private async Task RestAsync()
    {
        while (!(Wake.IsQuiet && Loop.Turns > 0) && !Running.IsCompleted)
        {
            await Task.Yield();
        }
    }
}
