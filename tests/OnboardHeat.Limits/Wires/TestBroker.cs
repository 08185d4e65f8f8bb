using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace OnboardHeat.Limits.Wires;

/// <summary>A mosquitto broker on a free loopback port, that can be killed and brought back on the same one.</summary>
internal sealed class TestBroker : IDisposable
{
    private readonly string _settings;
    private Process? _process;

    public TestBroker(string folder)
    {
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }

        _settings = Path.Combine(folder, "mosquitto.conf");
        // As root it would change to another user, who may not read this folder.
        var user = Environment.UserName == "root" ? "user root\n" : "";
        File.WriteAllText(
            _settings,
            string.Create(
                CultureInfo.InvariantCulture,
                $"listener {Port} 127.0.0.1\nallow_anonymous true\npersistence false\nset_tcp_nodelay true\n{user}"));
    }

    public int Port { get; }

    /// <summary>The program's path: on Debian the broker lies in /usr/sbin, which a plain user's PATH lacks.</summary>
    public static string Find(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':')
        .Append("/usr/sbin").Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException($"{program} is needed: apt-get install mosquitto mosquitto-clients");

    public async Task StartAsync()
    {
        var start = new ProcessStartInfo(Find("mosquitto"), ["-c", _settings])
        {
            RedirectStandardError = true, RedirectStandardOutput = true,
        };
        _process = Process.Start(start)!;
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        await Patience.UntilAsync(() => Answers(Port), 10, "mosquitto answers");
    }

    /// <summary>Kills it as a power cut would: no goodbye to anybody.</summary>
    public void Kill()
    {
        _process?.Kill();
        _process?.WaitForExit();
        _process?.Dispose();
        _process = null;
    }

    public void Dispose() => Kill();

    private static bool Answers(int port)
    {
        using var client = new TcpClient();
        try
        {
            client.Connect(IPAddress.Loopback, port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
