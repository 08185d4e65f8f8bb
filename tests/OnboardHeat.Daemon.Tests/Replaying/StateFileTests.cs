using OnboardHeat.Core;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine.Keeping;

namespace OnboardHeat.Daemon.Tests.Replaying;

public sealed class StateFileTests : IDisposable
{
    private const string Drive = "time,tank_top\n2026-05-03T09:00:00Z,50\n2026-05-03T09:00:02Z,50\n";

    private readonly TemporaryFolder _folder = new();

    private static KeptFileContent SomeContent => new(7, new KeptState
    {
        Learnt = new LearntVan
        {
            Tank = new LearntTank { LossWPerK = new Estimate(0.71, 0.05, TimeSpan.FromHours(3), 12) },
        },
        Alarms =
            [new KeptAlarm("rating-near", "hose", AlarmState.Shelved, true, false, true, 12.5, 600, "hot \u00b0 hose")],
        IsInWorks = true,
        WorksAgeS = 60.25,
        IsDrained = true,
    });

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void WrittenState_IsReadBackAsItWas()
    {
        var file = new KeptFile(_folder["kept"], hasSecondCopy: true);

        file.Write(SomeContent);

        var read = file.Read(Fail)!;
        Assert.Equal(7, read.Run);
        Assert.Equal(SomeContent.State.Learnt, read.State.Learnt);
        Assert.Equal(SomeContent.State.Alarms, read.State.Alarms);
        Assert.Equal((true, 60.25, true), (read.State.IsInWorks, read.State.WorksAgeS, read.State.IsDrained));
    }

    [Fact]
    public void AnyDamagedByte_IsToldAndNeverTaken()
    {
        // GIVEN a sound file
        var path = _folder["kept"];
        var file = new KeptFile(path, hasSecondCopy: false);
        file.Write(SomeContent);
        var sound = File.ReadAllBytes(path);

        // WHEN each byte in turn is flipped, or the file ends there
        for (var i = 0; i < sound.Length; i++)
        {
            AssertDamaged(file, [.. sound[..i], (byte)(sound[i] ^ 0x20), .. sound[(i + 1)..]]);
            AssertDamaged(file, sound[..i]);
        }
    }

    [Fact]
    public void NewestCopyDamaged_TheOneBeforeIsTakenAndItIsTold()
    {
        var path = _folder["kept"];
        var file = new KeptFile(path, hasSecondCopy: true);
        file.Write(SomeContent with { Run = 1 });
        file.Write(SomeContent with { Run = 2 });
        File.WriteAllText(path, "torn");
        var told = new List<string>();

        Assert.Equal(1, file.Read(told.Add)!.Run);

        Assert.StartsWith(path + ": damaged", Assert.Single(told), StringComparison.Ordinal);
    }

    [Fact]
    public void PowerCutBetweenTheRenames_TheOneBeforeIsTaken()
    {
        var path = _folder["kept"];
        var file = new KeptFile(path, hasSecondCopy: true);
        file.Write(SomeContent with { Run = 1 });
        file.Write(SomeContent with { Run = 2 });
        File.Delete(path);

        Assert.Equal(1, file.Read(Fail)!.Run);
    }

    [Fact]
    public void StateFileThatIsNotThere_StartsKnowingNothingAndIsWritten()
    {
        var outcome = ReplayCall.Of([_folder.Write("a.csv", Drive)], state: _folder["state"]);

        Assert.Equal((ExitCode.Done, ""), (outcome.ExitCode, outcome.Errors));
        Assert.NotNull(new KeptFile(_folder["state"], hasSecondCopy: false).Read(Fail));
    }

    [Fact]
    public void DamagedStateFile_IsOneLineAndTheReplayGoesOn()
    {
        _folder.Write("state", "{}");

        var outcome = ReplayCall.Of([_folder.Write("a.csv", Drive)], state: _folder["state"], everyS: 60);

        Assert.Equal((ExitCode.Done, 1), (outcome.ExitCode, outcome.Of("status").Length));
        Assert.Contains("damaged", Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void StateCarriesWhatWasLearnt_AndNoAlarmsWorksOrDrained()
    {
        // GIVEN a state file of a van in works, drained, with an alarm put aside
        var file = new KeptFile(_folder["state"], hasSecondCopy: false);
        file.Write(SomeContent);

        ReplayCall.Of([_folder.Write("a.csv", Drive)], state: _folder["state"]);

        var after = file.Read(Fail)!.State;
        Assert.NotNull(after.Learnt.Tank.LossWPerK);
        Assert.Empty(after.Alarms);
        Assert.Equal((false, false), (after.IsInWorks, after.IsDrained));
    }

    [Fact]
    public void StateFileThatCannotBeWritten_IsToldAndEndsWithSeventy()
    {
        var outcome = ReplayCall.Of([_folder.Write("a.csv", Drive)], state: _folder["no/such/folder/state"]);

        Assert.Equal(ExitCode.Failed, outcome.ExitCode);
        Assert.Single(outcome.ErrorLines);
    }

    private static void Fail(string told) => Assert.Fail(told);

    private void AssertDamaged(KeptFile file, byte[] bytes)
    {
        _folder.Write("kept", bytes);
        var told = new List<string>();
        Assert.Null(file.Read(told.Add));
        Assert.Single(told);
    }
}
