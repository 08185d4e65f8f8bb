using System.Globalization;
using System.Net;
using System.Net.Sockets;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Limits.Wires;

/// <summary>A folder with a fabricated bus, a broker and a configuration that names both.</summary>
internal sealed class Bench : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("onboardheat-wires-").FullName;

    public Bench(IReadOnlyList<Channel> channels, double scanSeconds, string? host = null)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "bus"));
        Tree = new WireTree(Path.Combine(_folder, "bus"));
        Broker = new TestBroker(_folder);
        Configuration = Path.Combine(_folder, "van.json");
        var probes = channels.Select(
            channel => $$"""{ "Channel": "{{Channels.NameOf(channel)}}", "Rom": "{{WireTree.RomOf(channel)}}" }""");
        File.WriteAllText(Configuration, string.Create(CultureInfo.InvariantCulture, $$"""
            {
              "Tank": { "VolumeLitres": 24 },
              "OneWire": { "Bus": "{{Tree.Folder}}", "ScanSeconds": {{scanSeconds}},
                  "ParkedScanSeconds": {{scanSeconds}} },
              "Probes": [ {{string.Join(", ", probes)}} ],
              "History": { "Folder": "{{_folder}}/state" },
              "Messaging": { "Host": "{{host ?? "127.0.0.1"}}", "Port": {{Broker.Port}} },
              "Glance": { "Port": {{FreePort()}} },
              "Control": { "Socket": "{{_folder}}/control.sock" }
            }
            """));
    }

    public WireTree Tree { get; }

    public TestBroker Broker { get; }

    public string Configuration { get; }

    /// <summary>The program to try: what ONBOARDHEAT_PROGRAM names, which is the ahead-of-time build.</summary>
    public static IReadOnlyList<string> Program =>
        Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM") is { Length: > 0 } path
        ? [path]
        : throw new InvalidOperationException(
            "ONBOARDHEAT_PROGRAM names the program to try; tests/limits' scripts see to it");

    public void Dispose()
    {
        Broker.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
