using Microsoft.AspNetCore.Http;
using OnboardHeat.Core;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>What the review reads of journeys, and how it compares them.</summary>
internal sealed class ReviewEndpoints(IRecordReader record, VanDescription van)
{
    private readonly JourneyBook _book = new(record, van);

    /// <summary>The journeys, with what was found of them before.</summary>
    public JourneyBook Book => _book;

    public async Task ServeJourneysAsync(HttpContext context)
    {
        // Runs that have no date at all are asked for by themselves: they lie in no span of time.
        var span = context.Request.Query["undated"] == "1"
            ? new SpanQuery(DateTimeOffset.MinValue, DateTimeOffset.MinValue)
            : await SpanQuery.ReadAsync(context);
        if (span is { } asked)
        {
            var journeys = await _book.ReadAsync(asked.From, asked.To, context.RequestAborted);
            await Body.WriteAsync(context, new JourneysAnswer([.. journeys.Select(one => one.Form)]),
                ApiJson.Default.JourneysAnswer);
        }
    }

    public async Task ServeCompareAsync(HttpContext context)
    {
        if (!ReviewSpan.TryParse(context.Request.Query["a"], out var first)
            || !ReviewSpan.TryParse(context.Request.Query["b"], out var second))
        {
            await Body.SayAsync(
                context, StatusCodes.Status400BadRequest,
                "a and b are needed: run/from/to with elapsed seconds, or from/to as ISO 8601; 40 days at most.");
            return;
        }

        if (await Overlay.ReadAsync(first, second, record, van, context.RequestAborted) is not { } overlay)
        {
            await Body.SayAsync(context, StatusCodes.Status404NotFound,
                "One of the two has no tank temperatures on record.");
            return;
        }

        await Body.WriteAsync(
            context,
            new CompareAnswer(AnswerOf(overlay.First), AnswerOf(overlay.Second), Rounded(overlay.StartCelsius),
                overlay.SurroundingsCelsius is { } around ? Rounded(around) : null),
            ApiJson.Default.CompareAnswer);
    }

    public async Task ServeInsulationAsync(HttpContext context)
    {
        var review = new InsulationReview(_book, record);
        var marks = await review.MarksAsync(DateTimeOffset.UnixEpoch, DateTimeOffset.MaxValue, context.RequestAborted);
        var asked = context.Request.Query["at"].ToString();
        var mark = asked.Length == 0
            ? marks.LastOrDefault(one => one.State == "insulation")
            : marks.FirstOrDefault(one => SpanQuery.TryTime(asked, out var at)
                && Math.Abs((one.Utc!.Value - at).TotalSeconds) < 1);
        if (mark is null && asked.Length > 0)
        {
            await Body.SayAsync(context, StatusCodes.Status404NotFound, "There is no change mark at that time.");
            return;
        }

        var listed = marks.Reverse().Select(RecordEndpoints.AnswerOf).ToList();
        await Body.WriteAsync(
            context,
            mark is null
                ? new InsulationReply { Marks = listed, Words = "No change mark of the insulation is on record yet." }
                : ReplyOf(listed, await review.AnswerAsync(mark, context.RequestAborted)),
            ApiJson.Default.InsulationReply);
    }

    private static InsulationReply ReplyOf(List<EventAnswer> marks, ReviewedInsulation reviewed) => new()
    {
        Marks = marks,
        At = PictureJson.TimeOf(reviewed.Mark.Utc),
        Verdict = InsulationWords.NameOf(reviewed.Answer.Verdict),
        Words = InsulationWords.Of(reviewed.Answer),
        BeforeWPerK = reviewed.Answer.BeforeWPerK,
        AfterWPerK = reviewed.Answer.AfterWPerK,
        DifferenceWPerK = reviewed.Answer.DifferenceWPerK,
        LowWPerK = reviewed.Answer.LowWPerK,
        HighWPerK = reviewed.Answer.HighWPerK,
        Before = [.. reviewed.Before.Select(one => one.Form)],
        After = [.. reviewed.After.Select(one => one.Form)],
        LeftOut =
        [
            .. reviewed.LeftOut.Select(left => new LeftOutAnswer(
                left.Night.Form, left.IsAfter ? "after" : "before", InsulationWords.Of(left.Why))),
        ],
    };

    private static CourseAnswer AnswerOf(OverlaidCourse course) => new(
        [.. course.Points.Select(point => Math.Round(point.AtS, 1))],
        [.. course.Points.Select(point => Rounded(point.WaterCelsius))],
        [.. course.PutCelsius.Select(Rounded)],
        Rounded(course.LossWPerK), Rounded(course.CoilWPerK));

    private static double Rounded(double value) => Math.Round(value, 3);
}
