using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class JourneyBookTests
{
    private static readonly DateTimeOffset s_from = SomeScans.Start.AddDays(-1), s_to = SomeScans.Start.AddDays(40);

    [Fact]
    public async Task JourneysOnRecord_AreThoseThatTheMonitorFound_AndTheOneCutOffIsFoundAgain()
    {
        // GIVEN a drive and a rest on record, and a second run that ends in mid-drive as by a power cut.
        await using var rig = new RecorderRig(new SimulatedCard());
        var scans = new SomeScans(5);
        var drive = scans.Drive(1, 900).ToList();
        drive.AddRange(Parked(1, 1800, 300));
        await rig.FeedAsync([.. drive, .. scans.Drive(2, 900, start: SomeScans.Start.AddDays(1))]);
        await rig.FeedAsync(scans.Drive(3, 40, start: SomeScans.Start.AddDays(2)));

        // WHEN the journeys are read
        var book = new JourneyBook(rig.Recorder.Reader, RecorderRig.Van);
        var journeys = await book.ReadAsync(s_from, s_to, CancellationToken.None);

        // THEN the first run has its drive from the record and its rest from the scans, the second its drive, at their
        // dates.
        var first = journeys.Where(one => one.Journey.Run == 1).ToList();
        Assert.Contains(first, one => one.Journey.Type == JourneyType.Heating && one.From >= SomeScans.Start
            && !one.IsOpen);
        var second = Assert.Single(journeys, one => one.Journey.Run == 2 && one.Journey.Type == JourneyType.Heating);
        Assert.Equal(JourneyEnd.RecordEnd, second.Journey.EndedBy);
        Assert.InRange((second.To!.Value - SomeScans.Start.AddDays(1)).TotalSeconds, 1600, 1800);
        Assert.Equal(RunDating.Trusted, second.Dating);
    }

    [Fact]
    public async Task Span_GivesJourneysThatTouchIt()
    {
        var record = new HandRecord().Run(1, 0, 30);
        SomeJourney.On(record, SomeJourney.Night(1, 3600, 8, 0.8));
        SomeJourney.On(record, SomeJourney.Drive(1, 40_000, 43_000));
        var book = new JourneyBook(record, RecorderRig.Van);
        async Task<int> CountAsync(double fromH, double toH) => (await book.ReadAsync(
            HandRecord.Start.AddHours(fromH), HandRecord.Start.AddHours(toH), CancellationToken.None)).Count;
        Assert.Equal(2, await CountAsync(0, 24));
        Assert.Equal(1, await CountAsync(0, 2));
        Assert.Equal(1, await CountAsync(11.5, 11.8));
        Assert.Equal(0, await CountAsync(9.5, 11));
    }

    [Fact]
    public async Task UndatedRun_IsSaidToBe()
    {
        var record = new HandRecord().Run(1, 0, 30, RunDating.Undated);
        SomeJourney.On(record, SomeJourney.Drive(1, 40_000, 43_000));
        var found = await new JourneyBook(record, RecorderRig.Van)
            .ReadAsync(HandRecord.Start, HandRecord.Start.AddDays(2), CancellationToken.None);
        Assert.Equal("undated", Assert.Single(found).Form.Dating);
    }

    [Fact]
    public async Task RunWithoutAnyDate_IsFoundByAskingForIt()
    {
        var record = new HandRecord();
        record.Runs.Add(new RecordedRun(1, TimeSpan.Zero, TimeSpan.FromHours(2), null, null, RunDating.Undated));
        var kept = JourneyJson.EventOf(SomeJourney.Drive(1, 0, 3600), TimeSpan.FromSeconds(3660));
        record.Events.Add(kept);
        var book = new JourneyBook(record, RecorderRig.Van);
        Assert.Empty(await book.ReadAsync(HandRecord.Start, HandRecord.Start.AddDays(2), CancellationToken.None));
        var found = Assert.Single(await book.ReadAsync(DateTimeOffset.MinValue, DateTimeOffset.MinValue,
            CancellationToken.None));
        Assert.Null(found.From);
        Assert.Equal("undated", found.Form.Dating);
    }

    private static IEnumerable<Scan> Parked(int run, double fromS, int count)
    {
        for (var i = 0; i < count; i++)
        {
            var elapsed = TimeSpan.FromSeconds(fromS + (i * 10));
            var scan = new Scan { Run = run, Elapsed = elapsed, Utc = SomeScans.Start + elapsed, IsUtcTrusted = true };
            scan[Channel.TankTop] = scan[Channel.TankBottom] = Reading.Of(60 - (0.0001 * i));
            scan[Channel.Surroundings] = Reading.Of(15);
            scan[Signal.EngineRunning] = false;
            yield return scan;
        }
    }
}
