using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Outputs;

namespace OnboardHeat.Daemon.Trials;

/// <summary>
/// Once a day a failure that did not happen goes the whole way of a real one: scans, screening, estimates, watchers,
/// the picture, a queue of turns, and the rules of what sounds, all on a shadow of the chain, so that the real picture
/// is untouched. If it does not come out at the end, the house says so, and `cannot-judge` is raised.
/// </summary>
internal sealed class DailyTrial(RunningVan van, TimeProvider time, ILogger log)
{
    /// <summary>The first trial leaves the start alone; then it is daily.</summary>
    public static readonly TimeSpan First = TimeSpan.FromMinutes(10), Every = TimeSpan.FromDays(1);

    /// <summary>A trial shares the processor: so many scans, then a rest.</summary>
    private const int ScansAtOnce = 50;

    private static readonly TimeSpan s_rest = TimeSpan.FromMilliseconds(20);

    /// <summary>Breaks the shadow chain, for tests of the trial itself.</summary>
    internal Func<Picture, Picture> InTheChain { get; init; } = static picture => picture;

    /// <summary>Tries every day until asked to stop.</summary>
    public async Task RunAsync(CancellationToken ending)
    {
        var wait = First;
        while (!ending.IsCancellationRequested)
        {
            await Task.Delay(wait, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (!ending.IsCancellationRequested)
            {
                await TryAsync(ending).ConfigureAwait(false);
            }

            wait = Every;
        }
    }

    /// <summary>One trial of every story that this van can tell.</summary>
    internal async Task TryAsync(CancellationToken ending)
    {
        var stories = StagedFailure.For(van.Description);
        foreach (var story in stories)
        {
            var name = AlarmTable.Of(story.Expected).Name;
            if (await FailureOfAsync(story, ending).ConfigureAwait(false) is { } why)
            {
                van.House.SetSelfTestFailed($"the daily trial of {name} did not come out: {why}");
                TrialLog.Failed(log, name, why);
                return;
            }

            if (ending.IsCancellationRequested)
            {
                return;
            }
        }

        van.House.SetSelfTestFailed("");
        TrialLog.Passed(log, stories.Count);
    }

    private async Task<string?> FailureOfAsync(StagedFailure story, CancellationToken ending)
    {
        try
        {
            return await PlayAsync(story, ending).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // What throws here would throw in the real chain: that is what the trial is for.
            return fault.Message.ReplaceLineEndings(" ");
        }
    }

    private async Task<string?> PlayAsync(StagedFailure story, CancellationToken ending)
    {
        var monitor = new Monitor(van.Description, KeptState.Fresh, ForecastTiming.WhenAsked);
        var feed = new TurnFeed();
        var queue = feed.Subscribe("shadow", ScansAtOnce);
        var count = 0;
        foreach (var scan in story.Scans())
        {
            feed.Publish(new Turn(scan.Copy(), InTheChain(monitor.Observe(scan))));
            if (++count % ScansAtOnce != 0)
            {
                continue;
            }

            if (ComesOut(story, queue))
            {
                return null;
            }

            await Task.Delay(s_rest, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (ending.IsCancellationRequested)
            {
                return null;
            }
        }

        return ComesOut(story, queue) ? null : "no alarm that sounds within its time";
    }

    private bool ComesOut(StagedFailure story, TurnQueue queue)
    {
        var isOut = false;
        while (queue.Reader.TryRead(out var turn))
        {
            isOut |= turn.Picture.Alarms.Any(alarm => alarm.Definition.Kind == story.Expected && alarm.IsPresent)
                && OutputsWorker.WouldSound(van.Options.Outputs, turn.Picture) == AlarmPriority.Critical;
        }

        return isOut;
    }
}
