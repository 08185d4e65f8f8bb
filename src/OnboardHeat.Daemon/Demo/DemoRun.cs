using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>Drives the simulated day through the monitor at a chosen pace.</summary>
/// <param name="van">The van.</param>
/// <param name="pace">How fast its day passes.</param>
/// <param name="broadcast">Where it is said to listeners; null where nobody could follow.</param>
/// <param name="time">Real time.</param>
internal sealed class DemoRun(SimulatedVan van, DemoPace pace, DemoBroadcast? broadcast, TimeProvider time)
{
    /// <summary>Real time between two drawings.</summary>
    private static readonly TimeSpan s_frame = TimeSpan.FromMilliseconds(100);

    private readonly Monitor _monitor = new(DemoDay.Description, KeptState.Fresh);
    private readonly Dictionary<string, double> _criticalSinceS = [];

    /// <summary>What the crew did.</summary>
    public Crew Crew { get; } = new(van);

    /// <summary>What was told and what was so.</summary>
    public DemoRecord Record { get; } = new(van);

    /// <summary>Goes through the day; false when it was ended before its evening.</summary>
    public async Task<bool> RunAsync(IDemoView view, CancellationToken stopping)
    {
        var dueS = 0.0;
        while (!stopping.IsCancellationRequested)
        {
            var speed = pace.At(van.Truth.ElapsedS);
            dueS += pace.IsUnlimited ? 60 : speed * s_frame.TotalSeconds;
            DemoMoment? last = null;
            while (van.Truth.ElapsedS < dueS || last is null)
            {
                if (!van.Step())
                {
                    return true;
                }

                last = Judge(view);
                if (pace.At(van.Truth.ElapsedS) < speed)
                {
                    // Something critical was told just now: stay with it.
                    dueS = van.Truth.ElapsedS;
                }
            }

            view.Show(last.Value, speed);
            if (!pace.IsUnlimited)
            {
                try
                {
                    await Task.Delay(s_frame, time, stopping).ConfigureAwait(false);
                }
                catch (OperationCanceledException)
                {
                    return false;
                }
            }
        }

        return false;
    }

    private DemoMoment Judge(IDemoView view)
    {
        var picture = _monitor.Observe(van.Scan);
        broadcast?.Publish(van.Scan, picture);
        var moment = new DemoMoment(picture, van.Truth, van.Plan.Start.AddSeconds(van.Truth.ElapsedS));
        Record.Observe(moment);
        Crew.Hear(picture.Changes);
        view.Observe(moment);
        foreach (var change in picture.Changes)
        {
            if (change is { IsRaised: true, Definition.Priority: AlarmPriority.Critical }
                && _criticalSinceS.TryAdd(change.Definition.Name, van.Truth.ElapsedS))
            {
                pace.Critical(van.Truth.ElapsedS);
            }
        }

        return moment;
    }
}
