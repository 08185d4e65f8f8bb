using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>
/// The whole program as a daemon over a fabricated bus, in a folder of its own, started from <c>/</c>.
/// </summary>
internal sealed class RunningDaemon : IDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(60);

    private readonly StringBuilder _log = new();
    private readonly Process _process;

    private RunningDaemon(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Take(line.Data);
        process.ErrorDataReceived += (_, line) => Take(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public int Id => _process.Id;

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

    public bool HasEnded => _process.HasExited;

    public static RunningDaemon Start(string configuration, params (string Name, string Value)[] environment)
    {
        var program = Environment.GetEnvironmentVariable("ONBOARDHEAT_PROGRAM");
        var start = new ProcessStartInfo(program ?? "dotnet")
        {
            WorkingDirectory = "/", RedirectStandardOutput = true, RedirectStandardError = true,
        };
        if (program is null)
        {
            start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "OnboardHeat.Daemon.dll"));
        }

        start.ArgumentList.Add("run");
        start.ArgumentList.Add("--config");
        start.ArgumentList.Add(configuration);
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return new RunningDaemon(Process.Start(start)!);
    }

    /// <summary>Waits until the log says so; fails with the log when it does not.</summary>
    public async Task SaysAsync(string words)
    {
        var began = TimeProvider.System.GetTimestamp();
        while (!Log.Contains(words, StringComparison.Ordinal))
        {
            Assert.True(TimeProvider.System.GetElapsedTime(began) < s_patience, $"'{words}' was not said:\n{Log}");
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, CancellationToken.None);
        }
    }

    /// <summary>Asks it to stop, as the service manager does.</summary>
    public async Task<(int Code, TimeSpan Took)> TerminateAsync()
    {
        var began = TimeProvider.System.GetTimestamp();
        using var kill = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        return (await EndAsync(), TimeProvider.System.GetElapsedTime(began));
    }

    /// <summary>Waits for its end.</summary>
    public async Task<int> EndAsync()
    {
        using var patience = new CancellationTokenSource(s_patience, TimeProvider.System);
        await _process.WaitForExitAsync(patience.Token);
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }

        _process.Dispose();
    }

    private void Take(string? line)
    {
        lock (_log)
        {
            _log.AppendLine(line);
        }
    }
}
