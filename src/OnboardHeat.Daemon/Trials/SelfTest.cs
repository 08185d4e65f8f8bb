using System.Threading.Channels;
using Microsoft.Extensions.Logging;
using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Daemon.Trials;

/// <summary>
/// The test at start, beside judging and never before it: each probe twice, the record written and read back, outputs
/// driven and read back, the clock, the watchdog. One line says 'ready', or what is missing.
/// </summary>
internal sealed class SelfTest(
    RunningVan van, TurnQueue turns, IRecordReader record, PinOutputs pins, bool hasWatchdog, TimeProvider time,
    ILogger log)
{
    /// <summary>Turns that may wait: the first few are looked at.</summary>
    public const int QueueCapacity = 8;

    /// <summary>Looks at each probe.</summary>
    private const int LooksAtProbes = 2;

    /// <summary>
    /// How long the record may take to give back what was written: a minute while a file is checked, and some.
    /// </summary>
    private static readonly TimeSpan s_recordWithin = TimeSpan.FromSeconds(90);

    private static readonly TimeSpan s_outputsWithin = TimeSpan.FromSeconds(10);

    private static readonly TimeSpan s_recordEvery = TimeSpan.FromSeconds(2);

    /// <summary>The result in one line.</summary>
    public string Line { get; private set; } = "not finished yet";

    /// <summary>Tests once and ends; judging does not wait for it.</summary>
    public async Task RunAsync(CancellationToken ending)
    {
        var missing = new List<string>();
        var note = new PersonAction(ActionKind.Note, "", $"started, version {DaemonVersion.Text}");
        try
        {
            var last = await LookAtProbesAsync(missing, ending).ConfigureAwait(false);
            van.Inbox.Offer(note);
            missing.AddRange(await ProveOutputsAsync(ending).ConfigureAwait(false));
            if (!await IsOnRecordAsync(note, last.Scan.Run, ending).ConfigureAwait(false))
            {
                missing.Add("the record does not give back what was written");
            }

            if (last.Scan is not { IsUtcTrusted: true })
            {
                missing.Add("the clock is not known to be right yet");
            }
        }
        catch (Exception over)
            when (ending.IsCancellationRequested && over is OperationCanceledException or ChannelClosedException)
        {
            return;
        }

        if (!hasWatchdog)
        {
            missing.Add("no watchdog of the service manager");
        }

        Tell(missing);
        van.Feed.Unsubscribe(turns);
        // A worker that ends would end the daemon.
        await Task.Delay(Timeout.InfiniteTimeSpan, time, ending).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    private async Task<IReadOnlyList<string>> ProveOutputsAsync(CancellationToken ending)
    {
        try
        {
            return await pins.ProveAsync().WaitAsync(s_outputsWithin, time, ending).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            return ["the outputs do not answer"];
        }
    }

    private void Tell(List<string> missing)
    {
        var probes = van.Options.Probes.Count;
        if (missing.Count == 0)
        {
            Line = $"ready: configuration, {probes} probes read twice, record, outputs, clock, watchdog";
            TrialLog.SelfTestReady(log, Line);
        }
        else
        {
            Line = $"missing: {string.Join("; ", missing)}";
            TrialLog.SelfTestNotReady(log, Line);
        }
    }

    private async Task<Turn> LookAtProbesAsync(List<string> missing, CancellationToken ending)
    {
        var seen = new int[Core.Scans.Channels.Count];
        var turn = await turns.Reader.ReadAsync(ending).ConfigureAwait(false);
        for (var look = 1; ; look++)
        {
            foreach (var channel in Core.Scans.Channels.All)
            {
                seen[(int)channel] += turn.Scan[channel].HasValue ? 1 : 0;
            }

            if (look == LooksAtProbes)
            {
                break;
            }

            turn = await turns.Reader.ReadAsync(ending).ConfigureAwait(false);
        }

        foreach (var channel in Core.Scans.Channels.All)
        {
            if (van.Description.Fitted.Has(channel) && seen[(int)channel] < LooksAtProbes)
            {
                var fault = PublicNames.Of(turn.Scan[channel].Fault) ?? "read once of twice";
                missing.Add($"probe {Core.Scans.Channels.NameOf(channel)}: {fault}");
            }
        }

        return turn;
    }

    private async Task<bool> IsOnRecordAsync(PersonAction note, int run, CancellationToken ending)
    {
        var start = time.GetTimestamp();
        while (time.GetElapsedTime(start) < s_recordWithin)
        {
            if (await HoldsAsync(note, run, ending).ConfigureAwait(false))
            {
                return true;
            }

            await Task.Delay(s_recordEvery, time, ending).ConfigureAwait(false);
        }

        return false;
    }

    private async Task<bool> HoldsAsync(PersonAction note, int run, CancellationToken ending)
    {
        try
        {
            await foreach (var scan in record.ReadRunScansAsync(run, run, ending).ConfigureAwait(false))
            {
                if (scan.Actions.Contains(note))
                {
                    return true;
                }
            }
        }
        catch (Exception fault) when (fault is not (OperationCanceledException or OutOfMemoryException))
        {
            // A record that is not open yet, or cannot be: the house says why, here it only counts that nothing comes
            // back.
        }

        return false;
    }
}
