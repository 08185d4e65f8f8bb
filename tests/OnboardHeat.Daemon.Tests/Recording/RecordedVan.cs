using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.History;

namespace OnboardHeat.Daemon.Tests.Recording;

/// <summary>
/// Scans judged and recorded run by run as the daemon does it, and the alarms that were told while it did.
/// </summary>
internal sealed class RecordedVan(TemporaryFolder folder, FittedSet fitted)
{
    private static readonly OnboardHeatOptions s_options = new();

    private KeptState _kept = KeptState.Fresh;

    /// <summary>Alarms as they were told: run, elapsed time, name, whether raised, and why.</summary>
    public List<(int Run, double ElapsedS, string Alarm, bool IsRaised, string Because)> Told { get; } = [];

    public string Folder => folder["record"];

    /// <summary>Judges one run to its end and records it.</summary>
    public async Task DriveAsync(IEnumerable<Scan> scans, Action<Scan, HouseStatus>? before = null)
    {
        var feed = new TurnFeed();
        var house = new HouseStatus();
        var turns = feed.Subscribe("record", 1_000_000);
        await using var recorder = new Recorder(Folder, 24, turns, house, TimeProvider.System, _ => { });
        var recording = Task.Run(recorder.RunAsync);
        var monitor = new Monitor(s_options.Describe(fitted), _kept);
        foreach (var scan in scans)
        {
            before?.Invoke(scan, house);
            scan.House = house.Current;
            var picture = monitor.Observe(scan);
            Told.AddRange(picture.Changes.Select(change => Line(scan, change)));
            feed.Publish(new Turn(scan.Copy(), picture));
        }

        _kept = monitor.Keep();
        feed.Complete();
        await recording;
    }

    /// <summary>Exports the closed record and gives the file.</summary>
    public async Task<string> ExportAsync(string name, RecordSpan? span = null)
    {
        await using var record = ClosedRecord.Open(Folder);
        await using var file = File.Create(folder[name]);
        await new RecordExport(record.Reader, fitted)
            .WriteAsync(span ?? RecordSpan.Whole, file, CancellationToken.None);
        return folder[name];
    }

    private static (int Run, double ElapsedS, string Alarm, bool IsRaised, string Because) Line(Scan scan,
        AlarmChange change) => (
        scan.Run, scan.Elapsed.TotalSeconds, $"{change.Definition.Name}/{change.Subject}", change.IsRaised,
        change.IsRaised ? change.Because : "");
}
