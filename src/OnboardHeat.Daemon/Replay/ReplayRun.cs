using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Daemon.Replay;

/// <summary>
/// One call of <c>replay</c>: checks every file, then runs each by itself through a monitor, exactly as <c>run</c>
/// would.
/// </summary>
internal sealed class ReplayRun
{
    /// <summary>The recordings, in their order.</summary>
    public required IReadOnlyList<RecordingFile> Files { get; init; }

    /// <summary>The van, as its owner states it.</summary>
    public required OnboardHeatOptions Options { get; init; }

    /// <summary>What is told before the first line, once every file is in order; null: nothing.</summary>
    public string? Preface { get; init; }

    /// <summary>Where what was learnt is read from and written to; null: each file starts knowing nothing.</summary>
    public KeptFile? State { get; init; }

    /// <summary>Seconds between status lines; null: none.</summary>
    public double? StatusEveryS { get; init; }

    /// <summary>Where lines go.</summary>
    public required Stream Output { get; init; }

    /// <summary>Where it is told what went wrong.</summary>
    public required TextWriter Log { get; init; }

    /// <summary>Does it all and gives the exit code.</summary>
    public int Execute()
    {
        try
        {
            foreach (var file in Files)
            {
                file.Check();
            }

            if (Preface is not null)
            {
                Log.WriteLine(Preface);
            }

            var learnt = State?.Read(Log.WriteLine)?.State.Learnt ?? LearntVan.Nothing;
            using var lines = new ReplayLines(Output);
            foreach (var file in Files)
            {
                var after = Replay(file, learnt, lines);
                learnt = State is null ? LearntVan.Nothing : after;
                lines.Flush();
            }

            State?.Write(new KeptFileContent(0, KeptState.Fresh with { Learnt = learnt }));
            return ExitCode.Done;
        }
        catch (RecordingException e)
        {
            Log.WriteLine(e.Message);
            return ExitCode.BadInput;
        }
        catch (OutputClosedException)
        {
            return ExitCode.Done;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Log.WriteLine($"the output or the state file could not be written: {e.Message}");
            return ExitCode.Failed;
        }
    }

    private LearntVan Replay(RecordingFile file, LearntVan learnt, ReplayLines lines)
    {
        using var reader = file.Open();
        var van = Options.Describe(reader.Fitted);
        var kept = KeptState.Fresh with { Learnt = learnt };
        Monitor? monitor = null;
        var pace = new StatusPace(StatusEveryS);
        var scan = new Scan();
        var run = 0;
        Picture? last = null;
        while (reader.Read(scan))
        {
            if (monitor is null || run != scan.Run)
            {
                EndJourneys(file, monitor, last, lines);
                kept = monitor?.Keep() ?? kept;
                monitor = new Monitor(van, kept, ForecastTiming.WhenAsked);
                run = scan.Run;
                pace.Begin(scan.Elapsed.TotalSeconds);
            }

            var picture = monitor.Observe(scan);
            foreach (var change in picture.Changes)
            {
                lines.Alarm(file.Name, picture, change);
            }

            last = picture;
            foreach (var journey in picture.Journeys)
            {
                lines.Journey(file.Name, picture, journey);
            }

            if (pace.IsDue(scan.Elapsed.TotalSeconds))
            {
                lines.Status(file.Name, picture, monitor.Forecast());
            }
        }

        EndJourneys(file, monitor, last, lines);
        return monitor?.Keep().Learnt ?? learnt;
    }

    /// <summary>A run's end ends its journeys.</summary>
    private static void EndJourneys(RecordingFile file, Monitor? monitor, Picture? last, ReplayLines lines)
    {
        if (monitor is not null && last is not null)
        {
            foreach (var journey in monitor.EndJourneys())
            {
                lines.Journey(file.Name, last, journey);
            }
        }
    }
}
