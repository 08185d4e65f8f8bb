using System.Globalization;
using System.Net;
using System.Net.Sockets;
using OnboardHeat.Adapters.Tests.Probes;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// A van for a whole daemon: a fabricated bus, a configuration and a state folder in one temporary folder.
/// </summary>
internal sealed class DaemonVan : IDisposable
{
    private readonly Dictionary<Channel, string> _roms = [];

    public DaemonVan(string id, int brokerPort, IEnumerable<Channel> channels, double scanSeconds,
        double volumeLitres = 24)
    {
        Id = id;
        Folder = Directory.CreateTempSubdirectory("onboardheat-trial-").FullName;
        Directory.CreateDirectory(Bus);
        Directory.CreateDirectory(State);
        foreach (var channel in channels)
        {
            _roms[channel] = string.Create(CultureInfo.InvariantCulture, $"28-{(int)channel + 1:x12}");
            Directory.CreateDirectory(Path.Combine(Bus, _roms[channel]));
        }

        File.WriteAllLines(Path.Combine(Bus, "w1_master_slaves"), _roms.Values);
        var probes = string.Join(
            ", ", _roms.Select(rom => $$"""{ "Channel": "{{Channels.NameOf(rom.Key)}}", "Rom": "{{rom.Value}}" }"""));
        File.WriteAllText(Configuration, string.Create(CultureInfo.InvariantCulture, $$"""
            {
              "Van": { "Id": "{{id}}" },
              "Tank": { "VolumeLitres": {{volumeLitres}} },
              "OneWire": { "Bus": "{{Bus}}", "ScanSeconds": {{scanSeconds}}, "ParkedScanSeconds": {{scanSeconds}} },
              "Probes": [ {{probes}} ],
              "History": { "Folder": "{{State}}" },
              "Messaging": { "Host": "127.0.0.1", "Port": {{brokerPort}} },
              "Glance": { "Port": {{FreePort()}} },
              "Control": { "Socket": "{{ControlSocket}}" }
            }
            """));
    }

    public string Id { get; }

    public string Folder { get; }

    public string Bus => Path.Combine(Folder, "bus");

    public string State => Path.Combine(Folder, "state");

    public string Configuration => Path.Combine(Folder, "van.json");

    public string ControlSocket => Path.Combine(Folder, "control.sock");

    public IReadOnlyDictionary<Channel, string> Roms => _roms;

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>
    /// What a probe reads from now on; the text replaces the old one in one step, as a kernel's read would see it.
    /// </summary>
    public void Set(Channel channel, double celsius)
    {
        File.WriteAllText(FileOf(channel) + ".new", KernelTexts.Of(celsius));
        File.Move(FileOf(channel) + ".new", FileOf(channel), overwrite: true);
    }

    /// <summary>Reads of this probe hang from now on: a FIFO that nobody writes.</summary>
    public async Task HangAsync(Channel channel)
    {
        File.Delete(FileOf(channel));
        using var made = System.Diagnostics.Process.Start("mkfifo", [FileOf(channel)]);
        await made.WaitForExitAsync();
    }

    /// <summary>
    /// Reads that hang come back with nothing, as a failed read of the kernel's does. The pipe is moved out of the way
    /// first: a read that opened it once more before the probe is shown again would hang for another ten seconds, and
    /// the trial, not the daemon, would be late.
    /// </summary>
    public void Release(Channel channel)
    {
        var hung = FileOf(channel) + ".hung";
        File.Move(FileOf(channel), hung);
        using (new FileStream(hung, FileMode.Open, FileAccess.ReadWrite))
        {
            // Opening it for writing and closing it again is what wakes the readers.
        }

        File.Delete(hung);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private string FileOf(Channel channel) => Path.Combine(Bus, _roms[channel], "w1_slave");
}
