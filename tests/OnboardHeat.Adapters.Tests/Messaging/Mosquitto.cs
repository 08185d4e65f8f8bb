using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>A mosquitto broker as a process of its own on a free loopback port.</summary>
internal sealed class Mosquitto : IBrokerUnderTest
{
    private readonly string _folder = Directory.CreateTempSubdirectory("onboardheat-mosquitto-").FullName;
    private readonly string _settings;
    private Process? _process;

    /// <summary>A broker with the given further lines in its settings; not started yet.</summary>
    public Mosquitto(params string[] lines)
    {
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }

        _settings = Path.Combine(_folder, "mosquitto.conf");
        string[] access = lines.Any(line => line.StartsWith("allow_anonymous", StringComparison.Ordinal))
            ? [] : ["allow_anonymous true"];
        // As root it would change to another user, who may not read a test's folder.
        string[] user = Environment.UserName == "root" ? ["user root"] : [];
        File.WriteAllLines(
            _settings,
            [$"listener {Port} 127.0.0.1", "persistence false", "set_tcp_nodelay true", .. access, .. lines, .. user]);
    }

    public int Port { get; }

    public MessagingOptions Options => new() { Host = "127.0.0.1", Port = Port };

    /// <summary>The program's path: on Debian the broker lies in /usr/sbin, which a plain user's PATH lacks.</summary>
    public static string Find(string program)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Concat(["/usr/sbin", "/usr/bin"]);
        return folders.Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists)
            ?? throw new InvalidOperationException(
                $"{program} is not installed, and these tests need it: run tests/run, which installs it, or apt-get "
                    + $"install mosquitto mosquitto-clients.");
    }

    public static async Task<Mosquitto> StartAsync(params string[] lines)
    {
        var broker = new Mosquitto(lines);
        await broker.StartAsync();
        return broker;
    }

    public async Task StartAsync()
    {
        _process = Process.Start(new ProcessStartInfo(
            Find("mosquitto"), ["-c", _settings]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        await Until.HoldsAsync(() => _process.HasExited || Answers(Port), "mosquitto answers");
        Assert.False(_process.HasExited, $"mosquitto ended at once: {File.ReadAllText(_settings)}");
    }

    public void Stop()
    {
        if (_process is { } process)
        {
            process.Kill();
            process.WaitForExit();
            process.Dispose();
            _process = null;
        }
    }

    public string WriteFile(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, text, new UTF8Encoding(false));
        return path;
    }

    /// <summary>Puts a path into the settings that was not known when they were written.</summary>
    public void Replace(string word, string with) =>
        File.WriteAllText(_settings, File.ReadAllText(_settings).Replace(word, with));

    public ValueTask DisposeAsync()
    {
        Stop();
        Directory.Delete(_folder, true);
        return ValueTask.CompletedTask;
    }

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
