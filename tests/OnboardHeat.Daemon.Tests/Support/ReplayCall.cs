using System.Text;
using OnboardHeat.Daemon.Replay;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>A <c>replay</c> inside the test's own process.</summary>
internal static class ReplayCall
{
    public static Outcome Of(
        IEnumerable<string> files, OnboardHeatOptions? options = null, string? state = null, double? everyS = null)
    {
        using var output = new MemoryStream();
        using var log = new StringWriter { NewLine = "\n" };
        var code = new ReplayRun
        {
            Files = [.. files.Select(f => new RecordingFile(f))],
            Options = options ?? new OnboardHeatOptions(),
            State = state is null ? null : new KeptFile(state, hasSecondCopy: false),
            StatusEveryS = everyS,
            Output = output,
            Log = log,
        }.Execute();
        return new Outcome(code, Encoding.UTF8.GetString(output.ToArray()), log.ToString());
    }
}
