using System.Net;
using System.Net.Sockets;

namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>A fabricated 1-Wire bus with a configuration that names it, all in one temporary folder.</summary>
internal sealed class BusFolder : IDisposable
{
    public const string Top = "28-00000000000a";
    public const string Flow = "28-00000000000b";

    /// <summary>23.125 °C as the kernel writes it (form of its w1_therm documentation).</summary>
    private const string Sound = "72 01 4b 46 7f ff 0e 10 57 : crc=57 YES\n72 01 4b 46 7f ff 0e 10 57 t=23125\n";

    private readonly TemporaryFolder _folder = new();

    public BusFolder(bool hasBus = true)
    {
        if (hasBus)
        {
            Plug(Top);
            Plug(Flow);
        }

        Configuration = _folder.Write("van.json", $$"""
            {
              "Tank": { "VolumeLitres": 24 },
              "OneWire": { "Bus": "{{Bus}}", "ScanSeconds": 1, "ParkedScanSeconds": 1 },
              "Probes": [ { "Channel": "tank_top", "Rom": "{{Top}}" }, { "Channel": "flow", "Rom": "{{Flow}}" } ],
              "History": { "Folder": "{{State}}" },
              "Glance": { "Port": {{FreePort()}} },
              "Control": { "Socket": "{{Control}}" }
            }
            """);
    }

    public string Bus => _folder["bus"];

    public string Control => _folder["control.sock"];

    public string State => _folder["state"];

    public string Configuration { get; }

    public void Plug(string rom, string text = Sound)
    {
        Directory.CreateDirectory(Path.Combine(Bus, rom));
        File.WriteAllText(Path.Combine(Bus, rom, "w1_slave"), text);
        var roms = Directory.EnumerateDirectories(Bus).Select(Path.GetFileName);
        File.WriteAllText(Path.Combine(Bus, "w1_master_slaves"), string.Join('\n', roms) + "\n");
    }

    public void Unplug(string rom) => Directory.Delete(Path.Combine(Bus, rom), recursive: true);

    /// <summary>From now on reads of this probe hang: a FIFO that nobody writes.</summary>
    public Task HangAsync(string rom) => HangFileAsync(Path.Combine(Bus, rom, "w1_slave"));

    /// <summary>From now on the list of the bus hangs.</summary>
    public Task HangListAsync() => HangFileAsync(Path.Combine(Bus, "w1_master_slaves"));

    private static async Task HangFileAsync(string file)
    {
        File.Delete(file);
        using var made = System.Diagnostics.Process.Start("mkfifo", [file]);
        await made.WaitForExitAsync();
        Assert.Equal(0, made.ExitCode);
    }

    public void Dispose() => _folder.Dispose();

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
