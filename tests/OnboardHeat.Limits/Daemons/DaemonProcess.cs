using System.Diagnostics;
using System.Net.Sockets;
using System.Text;

namespace OnboardHeat.Limits.Daemons;

/// <summary>
/// The whole daemon as a process, with the socket on which it tells its service manager that it judges.
/// </summary>
internal sealed class DaemonProcess : IDisposable
{
    private readonly Socket _notices;
    private readonly string _noticePath;
    private readonly StringBuilder _log = new();
    private readonly long _started = TimeProvider.System.GetTimestamp();
    private readonly TaskCompletionSource<TimeSpan?> _ready = new();

    private DaemonProcess(DaemonVan van)
    {
        _noticePath = Path.Combine(van.Folder, "notify.sock");
        File.Delete(_noticePath);
        _notices = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        _notices.Bind(new UnixDomainSocketEndPoint(_noticePath));
        var program = Program();
        var start = new ProcessStartInfo(program[0], [.. program[1..], "run", "--config", van.Configuration])
        {
            WorkingDirectory = "/", RedirectStandardOutput = true, RedirectStandardError = true,
        };
        start.Environment["NOTIFY_SOCKET"] = _noticePath;
        Process = Process.Start(start)!;
        Process.OutputDataReceived += Note;
        Process.ErrorDataReceived += Note;
        Process.BeginOutputReadLine();
        Process.BeginErrorReadLine();
        _ = ListenAsync();
    }

    public Process Process { get; }

    public string Log
    {
        get
        {
            lock (_log)
            {
                return _log.ToString();
            }
        }
    }

    /// <summary>Whether the program under trial is the ahead-of-time build, for which times are promised.</summary>
    public static bool IsAheadOfTime => Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM") is not null;

    public static DaemonProcess Start(DaemonVan van) => new(van);

    /// <summary>
    /// Waits for READY=1, which follows the first scan that was judged; gives the time since the start, null where it
    /// did not come.
    /// </summary>
    public async Task<TimeSpan?> ReadyAsync()
    {
        var patience = Task.Delay(TimeSpan.FromSeconds(30), TimeProvider.System);
        return await Task.WhenAny(_ready.Task, patience) == _ready.Task ? await _ready.Task : null;
    }

    /// <summary>SIGKILL, and waits until it is gone.</summary>
    public async Task KillAsync()
    {
        Process.Kill();
        await Process.WaitForExitAsync();
    }

    /// <summary>Stops it as the service manager does.</summary>
    public async Task StopAsync()
    {
        using var term = Process.Start("kill", ["-TERM", $"{Process.Id}"]);
        await term.WaitForExitAsync();
        await Process.WaitForExitAsync();
    }

    public void Dispose()
    {
        if (!Process.HasExited)
        {
            Process.Kill();
            Process.WaitForExit();
        }

        Process.Dispose();
        _notices.Dispose();
    }

    private static string[] Program()
    {
        if (Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM") is { } named)
        {
            return [named];
        }

        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "OnboardHeat.sln")))
        {
            root = root.Parent ?? throw new InvalidOperationException(
                "Trials run inside the source tree, or with ONBOARDHEAT_PROGRAM.");
        }

        return ["dotnet",
            Path.Combine(root.FullName, "src/OnboardHeat.Daemon/bin/Release/net10.0/OnboardHeat.Daemon.dll")];
    }

    /// <summary>
    /// Takes every notice to the end: the kernel holds ten, and a daemon that feeds its watchdog would wait for room.
    /// </summary>
    private async Task ListenAsync()
    {
        var notice = new byte[4096];
        try
        {
            while (true)
            {
                var count = await _notices.ReceiveAsync(notice);
                if (Encoding.UTF8.GetString(notice, 0, count).Contains("READY=1", StringComparison.Ordinal))
                {
                    _ready.TrySetResult(TimeProvider.System.GetElapsedTime(_started));
                }
            }
        }
        catch (Exception end) when (end is SocketException or ObjectDisposedException)
        {
            // The trial is over.
        }
    }

    private void Note(object sender, DataReceivedEventArgs line)
    {
        lock (_log)
        {
            _log.AppendLine(line.Data);
        }
    }
}
