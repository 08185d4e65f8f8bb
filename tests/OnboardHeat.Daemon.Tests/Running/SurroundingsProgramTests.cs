using LiteDB;
using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Running;

/// <summary>What a daemon may find when it starts.</summary>
[Trait("Category", "Program")]
public sealed class SurroundingsProgramTests
{
    [Fact]
    public async Task TwoStartedAtOnce_OneJudgesAndTheOtherSaysSoAndEnds()
    {
        using var van = new BusFolder();
        using var one = RunningDaemon.Start(van.Configuration);
        using var other = RunningDaemon.Start(van.Configuration);
        await Until.HoldsAsync(() => one.HasEnded || other.HasEnded, "one of the two ends");
        var (ended, judges) = one.HasEnded ? (one, other) : (other, one);
        Assert.Equal(70, await ended.EndAsync());
        await ended.SaysAsync("another daemon already judges this van");
        await judges.SaysAsync("control socket");
        Assert.Equal(
            0, (await WholeProgram.RunAsync(["note", "one is enough", "--config", van.Configuration])).ExitCode);
    }

    [Fact]
    public async Task MonthFileOfANewerVersion_IsLeftAsItIsInOneLineAndJudgingGoesOn()
    {
        // GIVEN a record that a newer version has written to
        using var van = new BusFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("page at");
            await Until.HoldsAsync(() => Directory.GetFiles(van.State, "*-undated.db").Length > 0, "there is a record");
            await daemon.TerminateAsync();
        }

        var month = Assert.Single(
            Directory.GetFiles(van.State, "*.db"), file => !file.EndsWith("-log.db", StringComparison.Ordinal));
        MakeNewer(month);
        var before = await File.ReadAllBytesAsync(month);

        // WHEN this version starts THEN it says so once, touches nothing of it, and judges.
        using var next = RunningDaemon.Start(van.Configuration);
        await next.SaysAsync("was written by a newer version and is left as it is");
        Assert.Equal(
            0, (await WholeProgram.RunAsync(["note", "still judging", "--config", van.Configuration])).ExitCode);
        await next.TerminateAsync();
        Assert.Equal(before, await File.ReadAllBytesAsync(month));
    }

    private static void MakeNewer(string month)
    {
        using var file = new LiteDatabase(month);
        var about = file.GetCollection("about");
        var told = about.FindById(1);
        told["format"] = told["format"].AsInt32 + 1;
        about.Update(told);
    }
}
