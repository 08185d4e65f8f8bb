using System.Device.Gpio;
using System.Device.I2c;
using OnboardHeat.Engine.Judging;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Outputs;
using OnboardHeat.Outputs.Pins;
using OnboardHeat.Outputs.Showing;

namespace OnboardHeat.Daemon.Running;

/// <summary>What the daemon drives itself: buzzer, lamp and button in a worker, the display in another, the
/// heartbeat in the judging loop. Only what is configured.</summary>
internal sealed class PinOutputs : IHeartbeat, IDisposable
{
    private readonly OutputsWorker? _worker;
    private readonly HeartbeatPin? _heartbeat;
    private readonly DisplayWorker? _display;
    private volatile bool _isStarted;

    public PinOutputs(RunningVan van, Func<GpioController> open, DaemonLog journal, TimeProvider time)
    {
        var options = van.Options.Outputs;
        var log = journal.For("outputs");
        if (OutputsWorker.IsWanted(options))
        {
            _worker = new OutputsWorker(
                options, open, van.Feed.Subscribe("outputs", OutputsWorker.QueueCapacity), van.Inbox, time, log);
        }

        if (DisplayWorker.IsWanted(options))
        {
            var place = new I2cConnectionSettings(options.DisplayBus, options.DisplayAddress);
            _display = new DisplayWorker(
                options, () => I2cDevice.Create(place), van.Feed.Subscribe("display", DisplayWorker.QueueCapacity),
                time, log);
        }

        if (options.HeartbeatPin is { } pin)
        {
            _heartbeat = new HeartbeatPin(pin, open, time, log);
        }
    }

    /// <summary>
    /// The service manager's notices, with a beat of the heartbeat line beside each feeding of its watchdog.
    /// </summary>
    public IServiceNotifier BeatBeside(IServiceNotifier notices) =>
        _heartbeat is null ? notices : new BeatingNotifier(notices, this);

    /// <summary>Starts them; the worker ends when the feed does or when asked to.</summary>
    public void Start(Workers workers, CancellationToken ending)
    {
        _isStarted = true;
        if (_worker is { } worker)
        {
            workers.Add("outputs", Task.Run(() => worker.RunAsync(ending), CancellationToken.None));
        }

        if (_display is { } display)
        {
            workers.Add("display", Task.Run(() => display.RunAsync(ending), CancellationToken.None));
        }
    }

    /// <summary>
    /// Drives what can be driven and reads it back: what is wrong, line by line; empty when nothing is.
    /// </summary>
    public async Task<IReadOnlyList<string>> ProveAsync()
    {
        var wrong = new List<string>();
        if (_worker is { } worker)
        {
            wrong.AddRange(await worker.ProveAsync().ConfigureAwait(false));
        }

        wrong.AddRange(_heartbeat?.Trouble is { } heartbeat ? [$"heartbeat: {heartbeat}"] : []);
        wrong.AddRange(_display?.Trouble is { } display ? [$"display: {display}"] : []);
        return wrong;
    }

    /// <inheritdoc/>
    public void Beat()
    {
        // The loop turns before the first line of the log is out; a line that is not to be had is told after it.
        if (_isStarted)
        {
            _heartbeat?.Beat();
        }
    }

    public void Dispose()
    {
        _worker?.Dispose();
        _heartbeat?.Dispose();
        _display?.Dispose();
    }
}
