using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Replaying;

/// <summary>
/// The whole daemon under recorded drives: what it told once, it tells again. <c>ONBOARDHEAT_GOLDEN=write</c> writes
/// the goldens anew.
/// </summary>
public sealed class GoldenTests
{
    private const double StatusEveryS = 300;

    private static string Folder => Path.Combine(House.Root, "tests", "OnboardHeat.Daemon.Tests", "Recordings");

    public static TheoryData<string> Recordings =>
        new(Directory.EnumerateFiles(Folder, "*.csv")
            .Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Recordings))]
    public void Recording_GivesItsGolden(string name)
    {
        var golden = Path.Combine(Folder, name + ".golden.jsonl");
        var outcome = ReplayCall.Of([Recording(name)], Options(), everyS: StatusEveryS);
        Assert.Equal((ExitCode.Done, ""), (outcome.ExitCode, outcome.Errors));
        var lines = Portable(outcome);
        if (Environment.GetEnvironmentVariable("ONBOARDHEAT_GOLDEN") == "write")
        {
            File.WriteAllText(golden, string.Concat(lines.Select(l => l + "\n")));
        }

        Assert.True(File.Exists(golden), $"{name} has no golden; ONBOARDHEAT_GOLDEN=write makes one.");
        var differences = GoldenLines.Differences(File.ReadAllLines(golden), lines);
        Assert.True(
            differences.Count == 0, $"{name}: {differences.Count} differences\n{string.Join('\n', differences)}");
    }

    [Theory]
    [MemberData(nameof(Recordings))]
    [Trait("Category", "Program")]
    public async Task WholeProgramFromRoot_TellsWhatTheLibraryTells(string name)
    {
        var inside = ReplayCall.Of([Recording(name)], Options(), everyS: StatusEveryS);

        var whole = await WholeProgram.RunAsync(
            ["replay", Recording(name), "--status-every", "300", "--config", Path.Combine(Folder, "van.json")]);

        Assert.Equal((ExitCode.Done, ""), (whole.ExitCode, whole.Errors));
        Assert.NotEmpty(whole.Lines);
        Assert.Empty(GoldenLines.Differences(inside.Lines, whole.Lines));
    }

    [Fact]
    public void SmallestDifferenceThatMatters_IsSeen()
    {
        const string line = """{"v":1,"kind":"status","run":1,"elapsedS":60,"time":"2026-05-03T09:00:00Z","""
            + """ "showerMinutes":5.4,"heatingWatts":900,"until":"at"}""";
        string[] golden = [line];
        var alarm = line.Replace("09:00:00", "09:00:01", StringComparison.Ordinal);

        Assert.Empty(GoldenLines.Differences(golden, [line.Replace("5.4", "5.409", StringComparison.Ordinal)]));
        Assert.Single(GoldenLines.Differences(golden, [line.Replace("5.4", "5.412", StringComparison.Ordinal)]));
        Assert.Single(GoldenLines.Differences(golden, [line.Replace("900", "900.2", StringComparison.Ordinal)]));
        Assert.Single(GoldenLines.Differences(golden, [line.Replace("5.4", "null", StringComparison.Ordinal)]));
        Assert.Single(
            GoldenLines.Differences(golden, [line.Replace("\"at\"", "\"unknown\"", StringComparison.Ordinal)]));
        Assert.Single(GoldenLines.Differences(golden, [alarm]));
        Assert.Single(GoldenLines.Differences(golden, []));
        Assert.Single(GoldenLines.Differences(golden, [line, line]));
    }

    private static string Recording(string name) => Path.Combine(Folder, name + ".csv");

    private static OnboardHeatOptions Options()
    {
        var configuration = Configuration.Load(Path.Combine(Folder, "van.json"), [], ConfigurationUse.Any);
        Assert.Empty(configuration.Problems);
        return configuration.Options;
    }

    /// <summary>The lines without the folder that this tree happens to stand in.</summary>
    private static string[] Portable(Outcome outcome) =>
        [.. outcome.Lines.Select(l => l.Replace(Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal))];
}
