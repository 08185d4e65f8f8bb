using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Simulation;

namespace OnboardHeat.Benchmarks;

/// <summary>
/// Mountain days one after the other as runs of one recording: long enough that starting the program does not count.
/// </summary>
internal static class LongRecording
{
    private const int Runs = 50;

    /// <summary>Writes the recording and prints its number of scans.</summary>
    public static void Write(string file)
    {
        using var rows = new StringWriter { NewLine = "\n" };
        var writer = new RecordingWriter(rows, MountainScans.Fitted);
        var scans = MountainScans.All();
        foreach (var scan in scans)
        {
            writer.Write(scan);
        }

        var lines = rows.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        using var to = new StreamWriter(file) { NewLine = "\n" };
        to.WriteLine("run,elapsed_s," + lines[0]);
        for (var run = 1; run <= Runs; run++)
        {
            for (var i = 0; i < scans.Count; i++)
            {
                to.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"{run},{scans[i].Elapsed.TotalSeconds},{lines[i + 1]}"));
            }
        }

        Console.WriteLine(scans.Count * Runs);
    }
}
