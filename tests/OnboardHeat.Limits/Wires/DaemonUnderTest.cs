using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace OnboardHeat.Limits.Wires;

/// <summary>
/// The program as the service manager starts it: from <c>/</c>, with a configuration, its journal read back.
/// </summary>
internal sealed class DaemonUnderTest : IDisposable
{
    private readonly StringBuilder _log = new();
    private readonly Dictionary<string, double> _threads = [];
    private readonly Process _process;

    private DaemonUnderTest(Process process, double startedAt)
    {
        _process = process;
        StartedAt = startedAt;
        process.OutputDataReceived += (_, line) => Take(line.Data);
        process.ErrorDataReceived += (_, line) => Take(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>When it was started, Unix time in seconds.</summary>
    public double StartedAt { get; }

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

    /// <summary>Resident memory, megabytes.</summary>
    public double ResidentMB => StatusKB("VmRSS:") / 1024;

    /// <summary>The most that was ever resident, megabytes.</summary>
    public double PeakMB => StatusKB("VmHWM:") / 1024;

    /// <summary>
    /// Processor time of all threads seen so far, seconds; by the scheduler's nanoseconds, not by its ticks of 10 ms.
    /// To be asked every second: a thread that ends between two looks takes with it what it did since the last.
    /// </summary>
    public double ProcessorS
    {
        get
        {
            foreach (var thread in Directory.EnumerateDirectories(
                FormattableString.Invariant($"/proc/{_process.Id}/task")))
            {
                _threads[thread] = Math.Max(
                    _threads.GetValueOrDefault(thread), NanosecondsOf(Path.Combine(thread, "schedstat")));
            }

            return _threads.Values.Sum() / 1e9;
        }
    }

    /// <summary>Starts a program: a path, or <c>dotnet</c> with the path of an assembly.</summary>
    public static DaemonUnderTest Start(IReadOnlyList<string> program, string configuration)
    {
        var start = new ProcessStartInfo(program[0], [.. program.Skip(1), "run", "--config", configuration])
        {
            WorkingDirectory = "/", RedirectStandardOutput = true, RedirectStandardError = true,
        };
        var at = (TimeProvider.System.GetUtcNow() - DateTimeOffset.UnixEpoch).TotalSeconds;
        return new DaemonUnderTest(Process.Start(start)!, at);
    }

    /// <summary>Waits until its journal says so.</summary>
    public Task<double> SaysAsync(string words, double withinS) => Patience.UntilAsync(
        () => Log.Contains(words, StringComparison.Ordinal), withinS, $"the daemon says '{words}'; it said:\n{Log}");

    /// <summary>Asks it to stop, as the service manager does; its exit code and how long it took, seconds.</summary>
    public async Task<(int Code, double TookS)> TerminateAsync()
    {
        using var kill = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        var took = await Patience.UntilAsync(() => _process.HasExited, 15, "the daemon ends when asked to");
        return (_process.ExitCode, took);
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

    /// <summary>
    /// Time on a processor, the first figure of proc(5)'s schedstat; nothing for a thread that has just ended.
    /// </summary>
    private static double NanosecondsOf(string schedstat)
    {
        try
        {
            return double.Parse(File.ReadAllText(schedstat).Split(' ')[0], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private double StatusKB(string name)
    {
        var path = FormattableString.Invariant($"/proc/{_process.Id}/status");
        var line = File.ReadLines(path).First(one => one.StartsWith(name, StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
    }

    private void Take(string? line)
    {
        lock (_log)
        {
            _log.AppendLine(line);
        }
    }
}
