using System.Text.Json;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Tests.Recording;

/// <summary>What the record is worth: exported and replayed it tells the same alarms at the same moments.</summary>
public sealed class ExportReplayTests
{
    [Fact]
    public async Task TwoRunsWithALossActionsFaultsAndReports_ReplayToTheSameAlarms()
    {
        using var folder = new TemporaryFolder();
        var recorded = new RecordedVan(folder, Kits.Full);
        await recorded.DriveAsync(
            Scans(new SimulatedVan(new VanTraits(), DrivePlans.MountainDay(hoseComesOff: true), 7), run: 1), Disturb);
        await recorded.DriveAsync(Scans(Scenarios.Make(ScenarioKind.Glitches, 3).Start(), run: 2));

        var outcome = ReplayCall.Of([await recorded.ExportAsync("export.csv")]);

        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Equal(recorded.Told, outcome.Of("alarm").Select(Line));
        Assert.Contains(recorded.Told, told => told.Alarm == "coolant-loss/" && told.IsRaised);
        Assert.Contains(recorded.Told, told => told.Alarm == "history-stopped/"
            && told.Because == "the card / is full");
        Assert.Contains(recorded.Told, told => told.Alarm == "probe-fault/flow");
        Assert.Contains(recorded.Told, told => told.Run == 2);
    }

    [Fact]
    public async Task ARunOfItsOwn_CanBeExported()
    {
        using var folder = new TemporaryFolder();
        var recorded = new RecordedVan(folder, Kits.Full);
        await recorded.DriveAsync(Scans(Scenarios.Make(ScenarioKind.Ordinary, 5).Start(), run: 1).Take(300));
        await recorded.DriveAsync(Scans(Scenarios.Make(ScenarioKind.Ordinary, 6).Start(), run: 2).Take(200));

        Assert.True(RecordSpan.TryParse("2", "", "", out var span, out _));
        using var reader =
            RecordingReader.Open("second", File.OpenRead(await recorded.ExportAsync("second.csv", span)));
        var scan = new Scan();
        var count = 0;
        while (reader.Read(scan))
        {
            Assert.Equal(2, scan.Run);
            count++;
        }

        Assert.Equal(200, count);
    }

    /// <summary>
    /// What a long drive brings beside readings: faults with names, two actions in one scan, troubles of the house.
    /// </summary>
    private static void Disturb(Scan scan, Engine.HouseStatus house)
    {
        var second = (int)scan.Elapsed.TotalSeconds;
        if (second is > 900 and < 1100)
        {
            scan[Channel.Flow] = Reading.Failed(second % 4 == 0 ? ReadingFault.BadCrc : ReadingFault.AllZero);
        }

        if (second is 1300 or 1301)
        {
            scan.Actions = [new(ActionKind.Shelve, "probe-fault/flow", "30"),
                new(ActionKind.Note, "", "loud; =noise, \"rattle\"")];
        }

        house.SetHistoryStopped(second is > 1500 and < 2100 ? "the card | is full" : "");
        house.SetPowerLow(second is > 1800 and < 1900);
    }

    private static IEnumerable<Scan> Scans(SimulatedVan van, int run)
    {
        while (van.Step())
        {
            var scan = van.Scan.Copy();
            scan.Run = run;
            yield return scan;
        }
    }

    private static (int Run, double ElapsedS, string Alarm, bool IsRaised, string Because) Line(JsonElement line)
    {
        var isRaised = line.GetProperty("state").GetString() == "raised";
        return (
            line.GetProperty("run").GetInt32(),
            line.GetProperty("elapsedS").GetDouble(),
            $"{line.GetProperty("alarm").GetString()}/{line.GetProperty("subject").GetString()}",
            isRaised,
            isRaised ? line.GetProperty("because").GetString()! : "");
    }
}
