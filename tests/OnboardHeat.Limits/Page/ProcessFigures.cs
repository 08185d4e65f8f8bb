using System.Globalization;
using System.Net;

namespace OnboardHeat.Limits.Page;

/// <summary>What the kernel tells of a process (proc(5)).</summary>
internal sealed class ProcessFigures(int id)
{
    /// <summary>Resident memory (VmRSS), megabytes of a million bytes.</summary>
    public double ResidentMegabytes()
    {
        var line = File.ReadLines($"/proc/{id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal));
        return double.Parse(new string([.. line.Where(char.IsAsciiDigit)]), CultureInfo.InvariantCulture) * 1024 / 1e6;
    }

    /// <summary>Processor time used over a span, milliseconds.</summary>
    public async Task<double> CpuMsOverAsync(TimeSpan span)
    {
        var before = CpuMs();
        await Task.Delay(span, TimeProvider.System, CancellationToken.None);
        return CpuMs() - before;
    }

    /// <summary>Ports it listens on, as <c>tcp 127.0.0.1:8020</c>.</summary>
    public IReadOnlyList<string> Ports()
    {
        var sockets = Directory.EnumerateFiles($"/proc/{id}/fd").Select(f => new FileInfo(f).LinkTarget).ToHashSet();
        return
        [
            .. from table in (string[])["tcp", "tcp6", "udp", "udp6"]
               from line in File.ReadLines($"/proc/{id}/net/{table}").Skip(1)
               let fields = line.Split(' ', StringSplitOptions.RemoveEmptyEntries)
               // State 0A listens; a datagram socket that is bound has state 07.
               where fields[3] is "0A" or "07" && sockets.Contains($"socket:[{fields[9]}]")
               select $"{table} {EndOf(fields[1])}",
        ];
    }

    private static string EndOf(string hex)
    {
        var parts = hex.Split(':');
        var bytes = Convert.FromHexString(parts[0]);
        for (var i = 0; i < bytes.Length; i += 4)
        {
            Array.Reverse(bytes, i, 4);
        }

        return new IPEndPoint(new IPAddress(bytes), Convert.ToInt32(parts[1], 16)).ToString();
    }

    // Nanoseconds on a processor, thread by thread; the ticks of stat are too coarse for a page that costs
    // microseconds.
    private double CpuMs() => Directory.EnumerateDirectories($"/proc/{id}/task")
        .Sum(task =>
            long.Parse(File.ReadAllText(task + "/schedstat").Split(' ')[0], CultureInfo.InvariantCulture)) / 1e6;
}
