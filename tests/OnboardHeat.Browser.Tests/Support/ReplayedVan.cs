using System.Globalization;
using System.Net;
using System.Net.Sockets;
using OnboardHeat.Adapters.Tests.Probes;
using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Browser.Tests.Support;

/// <summary>
/// A fabricated 1-Wire bus on which a simulated drive is replayed, with a configuration that names it: what a daemon
/// sees of a van.
/// </summary>
internal sealed class ReplayedVan : IAsyncDisposable
{
    /// <summary>A name that would be markup, had anybody let it: the page must show it as text.</summary>
    public const string HoseName = "hose </script><img src=x onerror=document.body.dataset.leaked=1>";

    private static readonly Channel[] s_fitted =
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray];

    private readonly string _folder = Directory.CreateTempSubdirectory("onboardheat-van-").FullName;
    private readonly CancellationTokenSource _ending = new();
    private readonly SimulatedVan _van;
    private readonly Task _replaying;

    /// <summary>A van at this second of its day, going on from there one scan (2 s of its time) a second.</summary>
    public ReplayedVan(DrivePlan plan, double fromS, double reliefCelsius)
    {
        _van = new SimulatedVan(VanTraits.Touring(1).With(new FittedSet(s_fitted, [])), plan, 1);
        while (_van.Truth.ElapsedS < fromS && _van.Step())
        {
        }

        Directory.CreateDirectory(Bus);
        File.WriteAllLines(Path.Combine(Bus, "w1_master_slaves"), s_fitted.Select(RomOf));
        WriteScan();
        Port = FreePort();
        Configuration = Path.Combine(_folder, "van.json");
        var probes = s_fitted.Select(c => $$"""{ "Channel": "{{Channels.NameOf(c)}}", "Rom": "{{RomOf(c)}}" }""");
        File.WriteAllText(Configuration, $$"""
            {
              "Tank": { "VolumeLitres": 24, "ReliefCelsius": {{reliefCelsius}} },
              "Circuit": { "Parts": [ { "Id": "hose", "Name": "{{HoseName}}", "On": "flow", "MaxCelsius": 40 } ] },
              "OneWire": { "Bus": "{{Bus}}", "ScanSeconds": 1, "ParkedScanSeconds": 1 },
              "Probes": [ {{string.Join(", ", probes)}} ],
              "History": { "Folder": "{{Path.Combine(_folder, "state")}}" },
              "Glance": { "Port": {{Port}} },
              "Control": { "Socket": "{{Path.Combine(_folder, "control.sock")}}" }
            }
            """);
        _replaying = ReplayAsync();
    }

    public string Configuration { get; }

    public int Port { get; }

    private string Bus => Path.Combine(_folder, "bus");

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        await _replaying;
        _ending.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static string RomOf(Channel channel) =>
        "28-" + ((int)channel + 1).ToString("x12", CultureInfo.InvariantCulture);

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private async Task ReplayAsync()
    {
        while (!_ending.IsCancellationRequested)
        {
            await Task.Delay(TimeSpan.FromSeconds(1), TimeProvider.System, _ending.Token)
                .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (_van.Step())
            {
                WriteScan();
            }
        }
    }

    // Written beside and renamed: a half-written reading would be a probe fault, which is not what is looked at here.
    private void WriteScan()
    {
        foreach (var channel in s_fitted)
        {
            var probe = Directory.CreateDirectory(Path.Combine(Bus, RomOf(channel))).FullName;
            var beside = Path.Combine(probe, "new");
            File.WriteAllText(beside, KernelTexts.Of(_van.Scan[channel].Value));
            File.Move(beside, Path.Combine(probe, "w1_slave"), overwrite: true);
        }
    }
}
