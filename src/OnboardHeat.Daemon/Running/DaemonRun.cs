using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Daemon.Trials;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// The daemon in its van, wired together. Judging starts first and needs nothing but the probes; the record, the
/// broker, the page and the control socket come up beside it and may fail as they like.
/// </summary>
internal sealed class DaemonRun(OnboardHeatOptions options, string configurationFile, TimeProvider time)
{
    /// <summary>Stopping is promised within 6 s: what has not flushed by then is given up.</summary>
    public static readonly TimeSpan FlushWithin = TimeSpan.FromSeconds(5);

    /// <summary>How long the first line waits for the list of the bus.</summary>
    private static readonly TimeSpan s_listWithin = TimeSpan.FromSeconds(2);

    /// <summary>Turns that wait for the journal: minutes of them, should standard output stall.</summary>
    private const int JournalTurns = 128;

    private readonly SystemdNotices _systemd = new();

    public async Task<int> ExecuteAsync(CancellationToken stopping)
    {
        using var journal = new DaemonLog(options.Log);
        var log = journal.For("daemon");
        using var instance = InstanceLock.TryTake(options.History.Folder);
        if (instance is null)
        {
            Log.HeldByAnother(log, options.History.Folder);
            return ExitCode.Failed;
        }

        var notes = new List<string>();
        if (instance.Trouble is { } trouble)
        {
            notes.Add($"no lock in {options.History.Folder}, a second daemon would not be noticed: {trouble}");
        }

        return await JudgeAsync(journal, notes, stopping).ConfigureAwait(false);
    }

    private async Task<int> JudgeAsync(DaemonLog journal, List<string> notes, CancellationToken stopping)
    {
        var log = journal.For("daemon");
        var file = new KeptFile(KeptFiles.PathIn(options.History.Folder), hasSecondCopy: true);
        var kept = file.Read(notes.Add) ?? new KeptFileContent(0, KeptState.Fresh);
        var saver = new StateSaver(file, kept with { Run = kept.Run + 1, Probes = Fittings.Keep(options, kept.Probes) }, time)
        {
            Tell = why => TellOfKeeping(log, why),
        };
        var van = new RunningVan(options);
        foreach (var mark in Fittings.ChangeMarks(options, kept.Probes))
        {
            van.Inbox.Offer(mark);
        }

        using var ending = new CancellationTokenSource();
        using var wires = WiredVan.OfThisMachine(
            options.OneWire.Bus, Fittings.ProbesOf(options, kept.Probes), Fittings.ContactsOf(options), Board.Open, van.Wake, time);
        using var pins = new PinOutputs(van, Board.Open, journal, time);
        var trials = new VanTrials(van, pins, journal, time);
        using var loop = van.Judge(wires, kept, saver, pins.BeatBeside(_systemd), new TimeSyncMark(), time);
        var journalTurns = van.Feed.Subscribe("journal", JournalTurns);
        var workers = new Workers(log, time);
        workers.Add("judging", Task.Run(() => loop.RunAsync(ending.Token), CancellationToken.None));
        workers.Add("newest turn", van.Latest.RunAsync());

        var onBus = await wires.ListRomsAsync(s_listWithin).ConfigureAwait(false);
        Log.Started(
            log, DaemonVersion.Text, configurationFile, kept.Run + 1, StartLine.Probes(options, onBus), StartLine.Destination(options));
        notes.ForEach(note => Log.Noted(log, note));
        pins.Start(workers, ending.Token);
        workers.Add("keeping", saver.RunAsync());
        workers.Add("journal", new JournalOutput(journalTurns, van.Description.Fitted, log).RunAsync());
        await using var outputs = new VanOutputs(van, journal, time);
        outputs.Start(workers, ending.Token);
        trials.Start(workers, outputs.Record, ending.Token);
        var answers = new ControlAnswers(van);
        var transfers = new RecordTransfers(outputs.Record, van.Description.Fitted);
        var control = new ControlServer(options.Control.Socket, answers.AnswerAsync, transfers.Find, time, journal.For("control"));
        workers.Add("control", control.RunAsync(ending.Token));

        var isAsked = await workers.WaitAsync(stopping).ConfigureAwait(false);
        _systemd.Stopping();
        Log.Stopping(log);
        await ending.CancelAsync().ConfigureAwait(false);
        await workers.EndAsync(FlushWithin, "judging", saver.Complete).ConfigureAwait(false);
        Log.Stopped(log);
        return isAsked ? ExitCode.Done : ExitCode.Failed;
    }

    private static void TellOfKeeping(ILogger log, string? why)
    {
        if (why is null)
        {
            Log.KeptAgain(log);
        }
        else
        {
            Log.NotKept(log, why);
        }
    }
}
