using Microsoft.Extensions.Logging;
using OnboardHeat.Core;
using OnboardHeat.Daemon.Control;
using OnboardHeat.Daemon.Trials;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// The daemon in its van, wired together. Judging starts first and needs nothing but the probes; the record, the
/// broker, the page and the control socket come up beside it and may fail as they like.
/// </summary>
internal sealed class DaemonRun(Configuration configuration, string configurationFile, TimeProvider time)
{
    /// <summary>Stopping is promised within 6 s: what has not flushed by then is given up.</summary>
    public static readonly TimeSpan FlushWithin = TimeSpan.FromSeconds(5);

    /// <summary>Turns that wait for the journal: minutes of them, should standard output stall.</summary>
    private const int JournalTurns = 128;

    private readonly OnboardHeatOptions _options = configuration.Options;

    public async Task<int> ExecuteAsync(CancellationToken stopping)
    {
        using var journal = new DaemonLog(_options.Log);
        var log = journal.For("daemon");
        using var instance = InstanceLock.TryTake(_options.History.Folder);
        if (instance is null)
        {
            Log.HeldByAnother(log, _options.History.Folder);
            return ExitCode.Failed;
        }

        var notes = new List<string>();
        if (instance.Trouble is { } trouble)
        {
            notes.Add($"no lock in {_options.History.Folder}, a second daemon would not be noticed: {trouble}");
        }

        return await JudgeAsync(journal, notes, stopping).ConfigureAwait(false);
    }

    private async Task<int> JudgeAsync(DaemonLog journal, List<string> notes, CancellationToken stopping)
    {
        var log = journal.For("daemon");
        var file = new KeptFile(KeptFiles.PathIn(_options.History.Folder), hasSecondCopy: true);
        var kept = file.Read(notes.Add) ?? new KeptFileContent(0, KeptState.Fresh);
        var saver = SaverOf(file, kept, log);
        var van = new RunningVan(_options);
        foreach (var mark in Fittings.ChangeMarks(_options, kept.Probes))
        {
            van.Inbox.Offer(mark);
        }

        using var systemd = new SystemdNotices();
        using var ending = new CancellationTokenSource();
        using var wires = WiredVan.OfThisMachine(
            _options.OneWire.Bus, Fittings.ProbesOf(_options, kept.Probes), Fittings.ContactsOf(_options), Board.Open,
            van.Wake, time);
        using var pins = new PinOutputs(van, Board.Open, journal, time);
        var trials = new VanTrials(van, pins, journal, time);
        using var loop = van.Judge(wires, kept, saver, pins.BeatBeside(systemd), new TimeSyncMark(), time);
        var journalTurns = van.Feed.Subscribe("journal", JournalTurns);
        var firstDrive = new FirstDriveWorker(
            van.Feed.Subscribe("first drive", FirstDriveWorker.QueueCapacity), saver, log);
        var workers = new Workers(log, time);
        workers.Add("judging", Task.Run(() => loop.RunAsync(ending.Token), CancellationToken.None));
        workers.Add("newest turn", van.Latest.RunAsync());

        using var survey = BusSurvey.OfThisMachine(_options.OneWire.Bus, time);
        var onBus = await survey.ListAsync(CancellationToken.None).ConfigureAwait(false);
        Log.Started(
            log, DaemonVersion.Text, configurationFile, kept.Run + 1, StartLine.Probes(_options, onBus),
            StartLine.Destination(_options));
        notes.ForEach(note => Log.Noted(log, note));
        pins.Start(workers, ending.Token);
        workers.Add("keeping", saver.RunAsync());
        workers.Add("journal", new JournalOutput(journalTurns, van.Description.Fitted, log).RunAsync());
        await using var outputs = new VanOutputs(van, journal, time);
        outputs.Start(workers, ending.Token);
        trials.Start(workers, outputs.Record, ending.Token);
        workers.Add("first drive", firstDrive.RunAsync());
        var answers = Answers(
            van, saver, firstDrive, trials, new DaemonBus(van, wires, survey, saver),
            new PairingAnswer(() => outputs.Pairing));
        var transfers = new RecordTransfers(outputs.Record, outputs.Vault, van.Description.Fitted, outputs.Report);
        var control = new ControlServer(
            _options.Control.Socket, answers.AnswerAsync, transfers.Find, time, journal.For("control"));
        workers.Add("control", control.RunAsync(ending.Token));

        await using var lettingGo = StartMemory.LetGoLater(time);
        var isAsked = await workers.WaitAsync(stopping).ConfigureAwait(false);
        systemd.Stopping();
        Log.Stopping(log);
        await ending.CancelAsync().ConfigureAwait(false);
        await workers.EndAsync(FlushWithin, "judging", saver.Complete).ConfigureAwait(false);
        Log.Stopped(log);
        return isAsked ? ExitCode.Done : ExitCode.Failed;
    }

    /// <summary>Everything that can be asked over the control socket. A new answer is added here.</summary>
    private ControlAnswers Answers(
        RunningVan van, StateSaver saver, FirstDriveWorker firstDrive, VanTrials trials, DaemonBus bus,
        PairingAnswer pairing) => new(
        new ActionAnswer(van, saver.SavedAsync),
        new WorksAnswer(van),
        new ProbesAnswer(bus),
        new OffsetAnswer(bus),
        pairing,
        new CheckAnswer(van, configuration, bus, saver, firstDrive, trials));

    /// <summary>
    /// What keeps the small file; it begins with the new run's number and with the probes that are still the same.
    /// </summary>
    private StateSaver SaverOf(KeptFile file, KeptFileContent kept, ILogger log) => new(
        file, kept with { Run = kept.Run + 1, Probes = Fittings.Keep(_options, kept.Probes) }, time)
    {
        Tell = why => TellOfKeeping(log, why),
    };

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
