using OnboardHeat.Adapters.Tests.History;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Adapters.Tests.Review;

public sealed class InsulationReviewTests
{
    private const double DayS = 86_400;

    [Fact]
    public async Task Nights_AreTakenFromOneMarkToTheNext()
    {
        // GIVEN hoses changed on day 2, insulation on day 6, the coil on day 10, and a night each day.
        var record = Record();
        record.Event(1, 2 * DayS, "mark", "changed", "hoses", "")
            .Event(1, 6 * DayS, "mark", "changed", "insulation", "foam")
            .Event(1, 10 * DayS, "mark", "changed", "coil", "");
        var review = Review(record);
        var mark = (await review.MarksAsync(HandRecord.Start, HandRecord.Start.AddDays(20), CancellationToken.None))[1];

        // WHEN the insulation is asked about THEN the nights between the hoses and the coil count, each on its side.
        var reviewed = await review.AnswerAsync(mark, CancellationToken.None);
        Assert.Equal(4, reviewed.Before.Count);
        Assert.Equal(4, reviewed.After.Count);
        Assert.Equal(InsulationVerdict.Better, reviewed.Answer.Verdict);
        Assert.All(reviewed.After, night => Assert.True(night.From > mark.Utc));
    }

    [Fact]
    public async Task CoolantChanged_CutsNothing()
    {
        var record = Record();
        record.Event(1, 3 * DayS, "mark", "changed", "coolant", "")
            .Event(1, 6 * DayS, "mark", "changed", "insulation", "foam");
        var review = Review(record);
        var mark = (await review.MarksAsync(HandRecord.Start, HandRecord.Start.AddDays(20), CancellationToken.None))[1];
        Assert.Equal(6, (await review.AnswerAsync(mark, CancellationToken.None)).Before.Count);
    }

    [Fact]
    public void Words_TellAnswerIntervalAndNights()
    {
        var words = InsulationWords.Of(InsulationComparison.Of(
            new[] { 0.812, 0.795, 0.824, 0.807 }.Select((w, i) => SomeJourney.Night(1, i * DayS, 9, w)),
            new[] { 0.655, 0.671, 0.640 }.Select((w, i) => SomeJourney.Night(1, (9 + i) * DayS, 9, w))));
        Assert.Equal(
            "Yes, it is better. The tank lost 0.81 W/K before and loses 0.66 W/K now: -0.15 W/K, 90 % interval -0.18 "
                + "to -0.13."
            + " This rests on 4 nights before and 3 nights after.",
            words);
    }

    private static HandRecord Record()
    {
        var record = new HandRecord().Run(1, 0, 24 * 14);
        for (var day = 0; day < 14; day++)
        {
            var lossWPerK = (day < 6 ? 0.8 : 0.6) + (day % 2 * 0.01);
            SomeJourney.On(record, SomeJourney.Night(1, (day * DayS) + 50_000, 9, lossWPerK));
        }

        return record;
    }

    private static InsulationReview Review(HandRecord record) => new(new JourneyBook(record, RecorderRig.Van), record);
}
