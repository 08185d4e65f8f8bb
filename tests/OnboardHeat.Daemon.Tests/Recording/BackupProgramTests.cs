using OnboardHeat.Daemon.Tests.Support;

namespace OnboardHeat.Daemon.Tests.Recording;

[Trait("Category", "Program")]
public sealed class BackupProgramTests
{
    [Fact]
    public async Task BackupBesideTheDaemon_RestoresIntoAnEmptyFolderAndExportsTheSame()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("control socket");
            Assert.Equal(0,
                (await WholeProgram.RunAsync(["note", "before the pass", "--config", van.Configuration])).ExitCode);
            Assert.Equal(0, (await daemon.TerminateAsync()).Code);
        }

        using (var daemon = RunningDaemon.Start(van.Configuration))
        {
            await daemon.SaysAsync("control socket");
            var backup = await WholeProgram.RunAsync(["backup", folder["van.backup"], "--config", van.Configuration]);
            Assert.Equal(0, backup.ExitCode);
            Assert.Contains("read back and verified, 1 month", backup.Output, StringComparison.Ordinal);

            // What is there stays; a running daemon takes the request all the same.
            var again = await WholeProgram.RunAsync(["restore", folder["van.backup"], "--config", van.Configuration]);
            Assert.Equal(0, again.ExitCode);
            Assert.Contains("is on record already", again.Output, StringComparison.Ordinal);
        }

        var elsewhere = ("ONBOARDHEAT__History__Folder", folder["new-card"]);
        var restored =
            await WholeProgram.RunAsync(["restore", folder["van.backup"], "--config", van.Configuration], elsewhere);
        Assert.Equal(0, restored.ExitCode);
        Assert.Contains("restored and verified", restored.Output, StringComparison.Ordinal);
        string[] export = ["export", "--runs", "1", "--config", van.Configuration];
        var before = await WholeProgram.RunAsync(export);
        Assert.Contains("before the pass", before.Output, StringComparison.Ordinal);
        Assert.Equal(before.Output, (await WholeProgram.RunAsync(export, elsewhere)).Output);
    }

    [Fact]
    public async Task FileThatIsNoBackup_Exits65()
    {
        using var van = new BusFolder();
        using var folder = new TemporaryFolder();
        var outcome = await WholeProgram.RunAsync(
            ["restore", folder.Write("letter", "dear friends"), "--config", van.Configuration]);
        Assert.Equal(65, outcome.ExitCode);
        Assert.Contains("this is no backup", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ImportDryRun_SaysWhatWasUnderstoodAndAnImportReplays()
    {
        using var folder = new TemporaryFolder();
        var log = folder.Write("boiler.csv", "Zeit;Temp\n03.05.2026 09:00;20,5\n03.05.2026 09:01;20,75\n");
        string[] import = ["import", log, "--map", "Temp=tank_top", "--zone", "Europe/Zurich"];
        var dry = await WholeProgram.RunAsync([.. import, "--dry-run"]);
        Assert.Equal(0, dry.ExitCode);
        Assert.Contains("local times of Europe/Zurich: '03.05.2026 09:00' is 2026-05-03T07:00:00Z", dry.Output,
            StringComparison.Ordinal);
        Assert.Equal(0, (await WholeProgram.RunAsync([.. import, "--output", folder["drive.csv"]])).ExitCode);
        var replay = await WholeProgram.RunAsync(["replay", folder["drive.csv"], "--status-every", "60"]);
        Assert.Equal(2, replay.Of("status").Length);
        Assert.Equal(65, (await WholeProgram.RunAsync(["import", log, "--map", "Temp=tank_top"])).ExitCode);
    }
}
