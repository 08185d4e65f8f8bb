using System.Text.Json;
using OnboardHeat.Core;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tank;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Replay;

/// <summary>One call of <c>replay</c>: checks every file, then runs each by itself through a monitor.</summary>
internal sealed class ReplayRun
{
    public required IReadOnlyList<string> Files { get; init; }

    public string? ConfigFile { get; init; }

    public string? StateFile { get; init; }

    public double? StatusEveryS { get; init; }

    public int Execute()
    {
        try
        {
            foreach (var file in Files)
            {
                Check(file);
            }
        }
        catch (RecordingException e)
        {
            Console.Error.WriteLine(e.Message);
            return ExitCode.BadInput;
        }

        using var lines = new ReplayLines(Console.OpenStandardOutput());
        var learnt = LearntVan.Nothing;
        foreach (var file in Files)
        {
            learnt = Replay(file, StateFile is null ? LearntVan.Nothing : learnt, lines);
        }

        return ExitCode.Done;
    }

    private static void Check(string file)
    {
        var scan = new Scan();
        using var reader = RecordingReader.Open(file, File.OpenRead(file));
        while (reader.Read(scan))
        {
        }
    }

    private LearntVan Replay(string file, LearntVan learnt, ReplayLines lines)
    {
        using var reader = RecordingReader.Open(file, File.OpenRead(file));
        var van = Van(reader.Fitted);
        var monitor = new Monitor(van, KeptState.Fresh with { Learnt = learnt }, ForecastTiming.WhenAsked);
        var scan = new Scan();
        var run = 0;
        var pace = new StatusPace(StatusEveryS);
        while (reader.Read(scan))
        {
            if (run != scan.Run)
            {
                if (run != 0)
                {
                    monitor = new Monitor(van, monitor.Keep(), ForecastTiming.WhenAsked);
                }

                run = scan.Run;
                pace.Begin(scan.Elapsed.TotalSeconds);
            }

            var picture = monitor.Observe(scan);
            foreach (var change in picture.Changes)
            {
                lines.Alarm(file, picture, change);
            }

            if (pace.IsDue(scan.Elapsed.TotalSeconds))
            {
                lines.Status(file, picture, monitor.Forecast());
            }
        }

        return monitor.Keep().Learnt;
    }

    private VanDescription Van(FittedSet fitted)
    {
        var van = new VanDescription { Fitted = fitted };
        if (ConfigFile is null)
        {
            return van;
        }

        using var json = JsonDocument.Parse(File.ReadAllText(ConfigFile), new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip });
        double Number(string section, string key, double or) =>
            json.RootElement.TryGetProperty(section, out var s) && s.TryGetProperty(key, out var v) ? v.GetDouble() : or;
        return van with
        {
            Tank = new TankDescription { VolumeLitres = Number("Tank", "VolumeLitres", 24), ColdSupplyCelsius = Number("Tank", "ColdSupplyCelsius", 12) },
            Shower = new ShowerDescription { MixedCelsius = Number("Shower", "MixedCelsius", 39), FlowLitresPerMinute = Number("Shower", "FlowLitresPerMinute", 6) },
        };
    }
}
