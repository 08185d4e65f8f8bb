using System.Globalization;
using Microsoft.AspNetCore.Http;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Glance.Api;

/// <summary>What the review reads from the record.</summary>
internal sealed class RecordEndpoints(IRecordReader? record)
{
    private const int MostPoints = 4000;
    private const int MostEvents = 5000;

    public async Task ServeChartAsync(HttpContext context)
    {
        if (await SpanOfAsync(context) is not var (reader, from, to))
        {
            return;
        }

        var columns = context.Request.Query["columns"].ToString()
            .Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var isWide = int.TryParse(context.Request.Query["points"], CultureInfo.InvariantCulture, out var points)
            && points is >= 2 and <= MostPoints;
        if (columns.Length is 0 or > 24 || !isWide || !columns.All(IsColumn))
        {
            await Body.SayAsync(context, StatusCodes.Status400BadRequest,
                "columns (channels or figures) and points (2 to 4000) are needed.");
            return;
        }

        var lines = await reader.ReadChartAsync(columns, from, to, points, context.RequestAborted);
        await Body.WriteAsync(
            context,
            new ChartAnswer([.. lines.Select(line => new ChartLineAnswer(
                line.Column,
                [.. line.Points.Select(p => p.At.ToUnixTimeSeconds())],
                [.. line.Points.Select(p => Math.Round(p.Min, 3))],
                [.. line.Points.Select(p => Math.Round(p.Mean, 3))],
                [.. line.Points.Select(p => Math.Round(p.Max, 3))]))]),
            ApiJson.Default.ChartAnswer);
    }

    public async Task ServeEventsAsync(HttpContext context)
    {
        if (await SpanOfAsync(context) is not var (reader, from, to))
        {
            return;
        }

        var events = new List<EventAnswer>();
        await foreach (var one in reader.ReadEventsAsync(from, to, context.RequestAborted))
        {
            // Journeys have a route of their own.
            if (one.Kind != RecordedEvent.JourneyKind)
            {
                events.Add(AnswerOf(one));
            }

            if (events.Count == MostEvents)
            {
                break;
            }
        }

        await Body.WriteAsync(context, new EventsAnswer(events), ApiJson.Default.EventsAnswer);
    }

    public async Task ServeRunsAsync(HttpContext context)
    {
        if (record is null)
        {
            await Body.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "There is no record.");
            return;
        }

        var runs = await record.ReadRunsAsync(context.RequestAborted);
        await Body.WriteAsync(
            context,
            new RunsAnswer([.. runs.Select(run => new RunAnswer(
                run.Run, PictureJson.TimeOf(run.From), PictureJson.TimeOf(run.To),
                (run.LastElapsed - run.FirstElapsed).TotalSeconds, PublicNames.Of(run.Dating)))]),
            ApiJson.Default.RunsAnswer);
    }

    /// <summary>An event as the interface gives it.</summary>
    public static EventAnswer AnswerOf(RecordedEvent one) => new(
        one.Run, one.Elapsed.TotalSeconds, PictureJson.TimeOf(one.Utc), one.Kind, one.Name, one.State, one.Text);

    private static bool IsColumn(string name) => Channels.TryParse(name, out _) || FigureNames.All.Contains(name);

    private async Task<(IRecordReader Reader, DateTimeOffset From, DateTimeOffset To)?> SpanOfAsync(HttpContext context)
    {
        if (record is null)
        {
            await Body.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "There is no record.");
            return null;
        }

        return await SpanQuery.ReadAsync(context) is var (from, to) ? (record, from, to) : null;
    }
}
