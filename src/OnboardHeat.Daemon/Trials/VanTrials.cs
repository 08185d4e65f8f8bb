using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Trials;

/// <summary>
/// Everything by which the daemon tries itself: the test at start, the daily trial, the look at its own supply.
/// </summary>
internal sealed class VanTrials(RunningVan van, PinOutputs pins, DaemonLog journal, TimeProvider time)
{
    private readonly TurnQueue _turns = van.Feed.Subscribe("self-test", SelfTest.QueueCapacity);
    private SelfTest? _selfTest;

    /// <summary>The result of the test at start, in one line.</summary>
    public string SelfTestLine => _selfTest?.Line ?? "not begun yet";

    /// <summary>Starts them beside judging.</summary>
    public void Start(Workers workers, IRecordReader record, CancellationToken ending)
    {
        var log = journal.For("trials");
        var selfTest = _selfTest = new SelfTest(van, _turns, record, pins, SystemdNotices.HasWatchdog, time, log);
        workers.Add("self-test", Task.Run(() => selfTest.RunAsync(ending), CancellationToken.None));
        workers.Add(
            "daily trial", Task.Run(() => new DailyTrial(van, time, log).RunAsync(ending), CancellationToken.None));
        workers.Add(
            "supply", Task.Run(() => new SupplyWatch(van.House, time).RunAsync(ending), CancellationToken.None));
    }
}
