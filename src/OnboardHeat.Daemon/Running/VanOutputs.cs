using Microsoft.Extensions.Logging;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Glance;
using OnboardHeat.Glance.Report;
using OnboardHeat.History;
using OnboardHeat.Messaging;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Record, broker and page of a running van. Each reads turns from its own queue and names its own troubles; none holds
/// up another.
/// </summary>
internal sealed class VanOutputs : IAsyncDisposable
{
    private readonly Recorder _recorder;
    private readonly MessagingWorker? _messaging;
    private readonly PageWorker _page;

    public VanOutputs(RunningVan van, DaemonLog journal, TimeProvider time)
    {
        var options = van.Options;
        var recordLog = journal.For("record");
        _recorder = new Recorder(
            options.History.Folder, options.History.KeepMonths, van.Feed.Subscribe("record", Recorder.QueueCapacity),
            van.House, time,
            line => Log.Noted(recordLog, line));
        if (MessagingWorker.IsWanted(options.Messaging))
        {
            _messaging = new MessagingWorker(
                options.Messaging, options.Van.Id, van.Description.Fitted,
                van.Feed.Subscribe("messaging", MessagingWorker.QueueCapacity),
                van.Inbox, _recorder.Queue, TimeSpan.FromSeconds(options.OneWire.ParkedScanSeconds), time,
                journal.For("messaging"));
        }

        Report = new TripReport(_recorder.Reader, van.Description, options.Van.Id, time);
        var settings = new GlanceSettings
        {
            VanId = options.Van.Id,
            Port = options.Glance.Port,
            Listen = options.Glance.Listen,
            IsReadingOpen = options.Glance.OpenReading,
            LongestScanPeriod = TimeSpan.FromSeconds(options.OneWire.ParkedScanSeconds),
            CertificateFile = options.Glance.CertificateFile,
            CertificateKeyFile = options.Glance.CertificateKeyFile,
            PhonesFile = Path.Combine(options.History.Folder, "phones.json"),
        };
        _page = new PageWorker(
            settings,
            new GlancePorts(
                van.Feed, new PictureJson(options.Van.Id, van.Description.Fitted), van.Inbox, _recorder.Reader, time,
                journal.Factory,
                van.Description),
            time,
            journal.For("page"));
    }

    /// <summary>The record read back.</summary>
    public IRecordReader Record => _recorder.Reader;

    /// <summary>Makes reports of trips.</summary>
    public TripReport Report { get; }

    /// <summary>Makes phones known to the page; null while it is not up.</summary>
    public IPairing? Pairing => _page.Pairing;

    /// <summary>Backs the record up and restores months of it.</summary>
    public IRecordVault Vault => _recorder.Vault;

    /// <summary>Starts them; each ends when the feed does or when asked to.</summary>
    public void Start(Workers workers, CancellationToken ending)
    {
        workers.Add("record", Task.Run(_recorder.RunAsync, CancellationToken.None));
        if (_messaging is { } messaging)
        {
            workers.Add("messaging", Task.Run(() => messaging.RunAsync(ending), CancellationToken.None));
        }

        workers.Add("page", Task.Run(() => _page.RunAsync(ending), CancellationToken.None));
    }

    public async ValueTask DisposeAsync()
    {
        if (_messaging is not null)
        {
            await _messaging.DisposeAsync().ConfigureAwait(false);
        }

        await _recorder.DisposeAsync().ConfigureAwait(false);
    }
}
