using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine;
using OnboardHeat.Engine.Ports;
using OnboardHeat.History;

namespace OnboardHeat.Adapters.Tests.History;

public sealed class RecorderTests
{
    private static readonly CancellationToken s_never = CancellationToken.None;

    [Fact]
    public async Task ADriveWithAnAction_ReadsBackExactly()
    {
        var card = new SimulatedCard();
        var drive = new SomeScans(11).Drive(1, 4000).ToArray();
        drive[700].Actions = [new PersonAction(ActionKind.Changed, "hoses", "new hose on the flow side")];
        await RecordAsync(card, drive);

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var back = await ListAsync(
            rig.Recorder.Reader.ReadScansAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, s_never));
        var events = await ListAsync(
            rig.Recorder.Reader.ReadEventsAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, s_never));

        Assert.Equal(drive.Length, back.Count);
        Assert.All(drive.Zip(back), pair => Assert.Equal("", ScanCompare.Difference(pair.First, pair.Second)));
        var mark = Assert.Single(events, e => e.Kind == "mark");
        Assert.Equal(("changed", "hoses", "new hose on the flow side"), (mark.Name, mark.State, mark.Text));
        Assert.Equal(drive[700].Utc!.Value, mark.Utc!.Value, TimeSpan.FromSeconds(1));
        Assert.Equal("", rig.House.Current.ToString());
    }

    [Fact]
    public async Task ASpanOfADrive_GivesJustThatSpan()
    {
        var card = new SimulatedCard();
        var drive = new SomeScans(12).Drive(1, 9000).ToArray();
        await RecordAsync(card, drive);

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var from = SomeScans.Start.AddHours(2.25);
        var to = SomeScans.Start.AddHours(2.75);
        var back = await ListAsync(rig.Recorder.Reader.ReadScansAsync(from, to, s_never));

        // Dates come from one tie to the clock a month, so they may be some milliseconds off a scan's own label.
        var expected = drive.Count(scan => scan.Utc >= from && scan.Utc <= to);
        Assert.InRange(back.Count, expected - 1, expected + 1);
        Assert.Equal(from, back[0].Utc!.Value, TimeSpan.FromSeconds(3));
        Assert.Equal(to, back[^1].Utc!.Value, TimeSpan.FromSeconds(3));
    }

    [Fact]
    public async Task TwoRunsTheSecondNumberedAnew_KeepTheirOrder()
    {
        var card = new SimulatedCard();
        await RecordAsync(card, new SomeScans(13).Drive(1, 200));
        await RecordAsync(card, new SomeScans(14).Drive(1, 200));

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var runs = await rig.Recorder.Reader.ReadRunsAsync(s_never);

        Assert.Equal([1, 2], runs.Select(run => run.Run));
        Assert.Equal("", rig.House.Current.ToString());
    }

    [Fact]
    public async Task AClockTrustedLate_DatesTheRunBackwards()
    {
        var card = new SimulatedCard();
        var lying = new DateTimeOffset(2024, 11, 2, 3, 4, 5, TimeSpan.Zero);
        var before = new SomeScans(15).Drive(1, 300, start: lying, isTrusted: false);
        var after = new SomeScans(15).Drive(1, 300, fromS: 600);
        await RecordAsync(card, before.Concat(after));

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var run = Assert.Single(await rig.Recorder.Reader.ReadRunsAsync(s_never));

        Assert.Equal(RunDating.DatedAfterwards, run.Dating);
        Assert.Equal(SomeScans.Start, run.From!.Value, TimeSpan.FromSeconds(1));
        Assert.Equal(SomeScans.Start.AddSeconds(1198), run.To!.Value, TimeSpan.FromSeconds(1));
    }

    [Fact]
    public async Task ARunWithoutATrustedClock_IsShownAsUndated()
    {
        var card = new SimulatedCard();
        await RecordAsync(card, new SomeScans(16).Drive(1, 100, isTrusted: false));

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();

        Assert.Equal(RunDating.Undated, Assert.Single(await rig.Recorder.Reader.ReadRunsAsync(s_never)).Dating);
        Assert.Equal("undated", Assert.Single(await rig.Recorder.Reader.ReadMonthsAsync(s_never)).Label);
    }

    [Fact]
    public async Task ANewMonth_GetsAFileOfItsOwnAndReadsOn()
    {
        var card = new SimulatedCard();
        var drive = new SomeScans(17)
            .Drive(1, 3000, start: new DateTimeOffset(2026, 5, 31, 23, 30, 0, TimeSpan.Zero)).ToArray();
        await RecordAsync(card, drive);

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var months = await rig.Recorder.Reader.ReadMonthsAsync(s_never);
        var back = await ListAsync(rig.Recorder.Reader.ReadRunScansAsync(1, 1, s_never));

        Assert.Equal(["00001-2026-05.db", "00002-2026-06.db"], months.Select(month => month.Name));
        Assert.All(drive.Zip(back), pair => Assert.Equal("", ScanCompare.Difference(pair.First, pair.Second)));
        Assert.Equal(drive.Length, back.Count);
    }

    [Fact]
    public async Task AFullCard_PausesRecordingAndGoesOnByItselfWithoutAHole()
    {
        var card = new SimulatedCard();
        var drive = new SomeScans(18).Drive(1, 1500).ToArray();
        await using (var rig = new RecorderRig(card, RecordLimits.Default))
        {
            await rig.FeedAsync(drive[..300]);
            card.FreeBytes = 1 << 20;
            await rig.FeedAsync(drive[300..900]);
            Assert.Contains("history-stopped=the card has 1 MB free", rig.House.Current.ToString(),
                StringComparison.Ordinal);

            card.FreeBytes = long.MaxValue;
            rig.Time.Advance(TimeSpan.FromMinutes(2));
            await rig.FeedAsync(drive[900..]);
            Assert.Equal("", rig.House.Current.ToString());
        }

        await using var later = new RecorderRig(card);
        await later.SettleAsync();
        var back = await ListAsync(later.Recorder.Reader.ReadRunScansAsync(1, 1, s_never));
        Assert.All(drive.Zip(back), pair => Assert.Equal("", ScanCompare.Difference(pair.First, pair.Second)));
        Assert.Equal(drive.Length, back.Count);
    }

    [Fact]
    public async Task EntriesAreReadOnFromAReceiversPlace_AcrossARestart()
    {
        var card = new SimulatedCard();
        await using (var rig = new RecorderRig(card))
        {
            await rig.FeedAsync(new SomeScans(19).Drive(1, 4000));
            var first = await rig.Recorder.Queue.ReadAfterAsync(0, 10, s_never);
            Assert.Equal(Enumerable.Range(1, 10).Select(n => (long)n), first.Select(entry => entry.Number));
            Assert.Null(await rig.Recorder.Queue.ReadCursorAsync("shore", s_never));
            rig.Recorder.Queue.Advance("shore", 10);
        }

        await using var later = new RecorderRig(card);
        await later.SettleAsync();
        var at = await later.Recorder.Queue.ReadCursorAsync("shore", s_never);
        var rest = await later.Recorder.Queue.ReadAfterAsync(at!.Value, 1000, s_never);
        Assert.Equal(10, at);
        Assert.Equal(await later.Recorder.Queue.ReadNewestAsync(s_never), rest[^1].Number);
        Assert.Equal(Enumerable.Range(11, rest.Count).Select(n => (long)n), rest.Select(entry => entry.Number));
    }

    [Fact]
    public async Task ALongChart_IsDrawnFromRollUpsAndHoldsTheExtremes()
    {
        var card = new SimulatedCard();
        var drive = new SomeScans(20).Drive(1, 12_000).ToArray();
        await RecordAsync(card, drive);

        await using var rig = new RecorderRig(card);
        await rig.SettleAsync();
        var lines = await rig.Recorder.Reader.ReadChartAsync(
            ["flow", "stored_energy_kwh", "nothing"], SomeScans.Start, SomeScans.Start.AddHours(20), 100, s_never);

        Assert.Equal(3, lines.Count);
        Assert.Equal(drive.Max(scan => scan[Channel.Flow].Value), lines[0].Points.Max(point => point.Max), 3);
        Assert.Equal(drive.Min(scan => scan[Channel.Flow].Value), lines[0].Points.Min(point => point.Min), 3);
        Assert.Empty(lines[2].Points);
    }

    [Fact]
    public async Task TurnsLostBecauseTheQueueWasFull_AreMarkedAsAGap()
    {
        var feed = new TurnFeed();
        var turns = feed.Subscribe("record", 30);
        var monitor = new Monitor(RecorderRig.Van, KeptState.Fresh);
        foreach (var scan in new SomeScans(21).Drive(1, 100))
        {
            feed.Publish(new Turn(scan, monitor.Observe(scan)));
        }

        feed.Complete();
        var card = new SimulatedCard();
        await using (var recorder = new Recorder(
            () => card, RecordLimits.Default with { FreeBytes = 0 }, turns, new HouseStatus(), TimeProvider.System,
            _ => { }))
        {
            await recorder.RunAsync();
        }

        await using var later = new RecorderRig(card);
        await later.SettleAsync();
        var events = await ListAsync(
            later.Recorder.Reader.ReadEventsAsync(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, s_never));
        var gap = Assert.Single(events, happened => happened.Name == "history-gap");
        Assert.StartsWith("70 scans before this", gap.Text, StringComparison.Ordinal);
        Assert.Equal(30, (await ListAsync(later.Recorder.Reader.ReadRunScansAsync(1, 1, s_never))).Count);
    }

    private static async Task RecordAsync(SimulatedCard card, IEnumerable<Scan> scans)
    {
        var rig = new RecorderRig(card);
        await rig.FeedAsync(scans);
        await rig.DisposeAsync();
        Assert.Empty(rig.Said);
    }

    private static async Task<List<T>> ListAsync<T>(IAsyncEnumerable<T> items)
    {
        var list = new List<T>();
        await foreach (var item in items)
        {
            list.Add(item);
        }

        return list;
    }
}
