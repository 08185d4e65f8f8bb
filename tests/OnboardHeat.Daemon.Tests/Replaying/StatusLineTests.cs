using System.Globalization;
using System.Text.Json;
using OnboardHeat.Daemon.Tests.Support;
using OnboardHeat.Engine.Options;

namespace OnboardHeat.Daemon.Tests.Replaying;

public sealed class StatusLineTests : IDisposable
{
    // The estimate answers only once its probes have settled: a single row tells it nothing.
    private static readonly double[] s_fiveMinutes = [.. Enumerable.Range(0, 31).Select(i => i * 10.0)];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void StatusEvery_ComesAtTheFirstScanAtOrAfterEachMultiple()
    {
        // GIVEN scans at odd times from 100 s on, with a gap that swallows two multiples of ten
        double[] elapsedS = [100, 104, 109.9, 110.5, 119, 120, 121, 152, 159, 160];

        var outcome = ReplayCall.Of([Recording(elapsedS)], everyS: 10);

        Assert.Equal(
            [100, 110.5, 120, 152, 160], outcome.Of("status").Select(e => e.GetProperty("elapsedS").GetDouble()));
    }

    [Fact]
    public void NewRun_CountsItsMultiplesFromItsOwnFirstRow()
    {
        var file = _folder.Write(
            "a.csv", "run,elapsed_s,tank_top\n1,0,40\n1,7,40\n1,11,40\n2,3,40\n2,12,40\n2,13,40\n");

        var outcome = ReplayCall.Of([file], everyS: 10);

        Assert.Equal(
            [(1, 0.0), (1, 11.0), (2, 3.0), (2, 13.0)],
            outcome.Of("status").Select(e => (e.GetProperty("run").GetInt32(), e.GetProperty("elapsedS").GetDouble())));
    }

    [Fact]
    public void NoStatusEvery_NoStatusLine() => Assert.Empty(ReplayCall.Of([Recording([0, 10, 20])]).Of("status"));

    [Fact]
    public void RowsWithoutTime_TimesAreNullAndFiguresStand()
    {
        var status = ReplayCall.Of([Recording(s_fiveMinutes)], everyS: 60).Of("status")[^1];

        Assert.Equal(1, status.GetProperty("v").GetInt32());
        Assert.Equal(JsonValueKind.Null, status.GetProperty("time").ValueKind);
        Assert.Equal(JsonValueKind.Null, status.GetProperty("readyAt").ValueKind);
        Assert.Equal(JsonValueKind.Null, status.GetProperty("usableUntil").ValueKind);
        Assert.Equal(JsonValueKind.Number, status.GetProperty("storedEnergyKWh").ValueKind);
    }

    [Fact]
    public void NothingKnown_EveryFigureIsNull()
    {
        var file = _folder.Write("a.csv", "time,tank_top,flow\n2026-05-03T09:00:00.5+02:00,,70\n");

        var status = Assert.Single(ReplayCall.Of([file], everyS: 60).Of("status"));

        Assert.Equal("2026-05-03T07:00:00.500Z", status.GetProperty("time").GetString());
        string[] figures = ["storedEnergyKWh", "showerMinutes", "showerMinutesLow", "showerMinutesHigh"];
        Assert.All(figures, f => Assert.Equal(JsonValueKind.Null, status.GetProperty(f).ValueKind));
        Assert.Equal("unknown", status.GetProperty("until").GetString());
    }

    [Fact]
    public void BiggerTank_HoldsMoreHeat()
    {
        var file = Recording(s_fiveMinutes);
        var options = new OnboardHeatOptions { Tank = { VolumeLitres = 48 } };

        double Stored(OnboardHeatOptions? o) =>
            ReplayCall.Of([file], o, everyS: 60).Of("status")[^1].GetProperty("storedEnergyKWh").GetDouble();

        // Twice the water, and a vessel of 2 kg + 0.14 kg per litre: not quite twice the heat.
        Assert.InRange(Stored(options) / Stored(null), 1.9, 2.0);
    }

    private string Recording(double[] elapsedS) => _folder.Write("drive.csv", "elapsed_s,tank_top\n" + string.Concat(
        elapsedS.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s},50\n"))));
}
