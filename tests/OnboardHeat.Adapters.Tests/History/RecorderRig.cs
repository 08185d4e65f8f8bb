using Microsoft.Extensions.Time.Testing;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.History;
using OnboardHeat.History.Disk;

namespace OnboardHeat.Adapters.Tests.History;

/// <summary>A recorder over a card, fed turn by turn as the daemon's loop feeds it.</summary>
internal sealed class RecorderRig : IAsyncDisposable
{
    private readonly TurnFeed _feed = new();
    private readonly Recorder _recorder;
    private readonly Task _running;
    private readonly List<string> _said = [];
    private Monitor _monitor = NewMonitor(KeptState.Fresh);
    private int _run;

    public RecorderRig(IRecordDisk card, RecordLimits? limits = null)
    {
        var turns = _feed.Subscribe("record", 100_000);
        _recorder = new Recorder(() => card, limits ?? RecordLimits.Default with { FreeBytes = 0 }, turns, House, Time,
            line =>
        {
            lock (_said)
            {
                _said.Add(line);
            }
        });
        _running = _recorder.RunAsync();
    }

    public FakeTimeProvider Time { get; } = new();

    public HouseStatus House { get; } = new();

    public Recorder Recorder => _recorder;

    public IReadOnlyList<string> Said
    {
        get
        {
            lock (_said)
            {
                return [.. _said];
            }
        }
    }

    public static VanDescription Van { get; } =
        new() { Fitted = new FittedSet(Channels.All.ToArray(), Signals.All.ToArray()) };

    /// <summary>
    /// Gives scans to the Monitor and their turns to the recorder, and waits until what closed is on the card (or
    /// failed).
    /// </summary>
    public async Task FeedAsync(IEnumerable<Scan> scans)
    {
        foreach (var scan in scans)
        {
            if (scan.Run != _run)
            {
                _monitor = NewMonitor(_run == 0 ? KeptState.Fresh : _monitor.Keep());
                _run = scan.Run;
            }

            scan.House = House.Current;
            _feed.Publish(new Turn(scan.Copy(), _monitor.Observe(scan)));
        }

        await SettleAsync();
    }

    /// <summary>Waits until the recorder has taken all turns and done what they started.</summary>
    public async Task SettleAsync()
    {
        for (var quiet = 0; quiet < 3;)
        {
            await Task.Yield();
            await _recorder.SettleAsync();
            quiet = _recorder.IsIdle ? quiet + 1 : 0;
        }
    }

    public async ValueTask DisposeAsync()
    {
        _feed.Complete();
        await _running;
        await _recorder.DisposeAsync();
    }

    private static Monitor NewMonitor(KeptState kept) => new(Van, kept);
}
