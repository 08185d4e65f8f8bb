using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>
/// Files to take away: readings as a recorded drive, journeys and events as tables or as JSON. People's words are
/// guarded against spreadsheets that would take them for formulas.
/// </summary>
internal sealed class DownloadEndpoint(IRecordReader record, JourneyBook book, FittedSet fitted)
{
    public async Task ServeAsync(HttpContext context)
    {
        var name = context.Request.RouteValues["file"] as string ?? "";
        Func<SpanQuery, HttpContext, Task>? send = name switch
        {
            "readings.csv" => SendReadingsAsync,
            "readings.json" => new ReadingsJson(record, fitted).SendAsync,
            "journeys.csv" => SendJourneysAsync,
            "journeys.json" => SendJourneysJsonAsync,
            "events.csv" => SendEventsAsync,
            "events.json" => SendEventsJsonAsync,
            _ => null,
        };
        if (send is null)
        {
            await Body.SayAsync(context, StatusCodes.Status404NotFound,
                "There are readings, journeys and events, each as .csv and .json.");
            return;
        }

        if (await SpanQuery.ReadAsync(context) is { } span)
        {
            context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}\"";
            context.Response.ContentType = name.EndsWith(".csv", StringComparison.Ordinal) ? "text/csv; charset=utf-8"
                : "application/json";
            await send(span, context);
        }
    }

    private Task SendReadingsAsync(SpanQuery span, HttpContext context) => new RecordExport(record, fitted).WriteAsync(
        RecordSpan.Whole with { From = span.From, To = span.To }, context.Response.Body, context.RequestAborted);

    private async Task SendJourneysAsync(SpanQuery span, HttpContext context)
    {
        var text = new StringBuilder(JourneyTable.Head);
        foreach (var one in await book.ReadAsync(span.From, span.To, context.RequestAborted))
        {
            text.Append(JourneyTable.Row(one.Form));
        }

        await context.Response.WriteAsync(text.ToString(), context.RequestAborted);
    }

    private async Task SendJourneysJsonAsync(SpanQuery span, HttpContext context)
    {
        var journeys = await book.ReadAsync(span.From, span.To, context.RequestAborted);
        await Body.WriteAsync(context, new JourneysAnswer([.. journeys.Select(one => one.Form)]),
            ApiJson.Default.JourneysAnswer);
    }

    private async Task SendEventsAsync(SpanQuery span, HttpContext context)
    {
        await context.Response.WriteAsync("run,elapsed_s,time,kind,name,state,text\n", context.RequestAborted);
        await foreach (var one in EventsAsync(span, context.RequestAborted))
        {
            var words = string.Join(',', new[] { one.Name, one.State, one.Text }.Select(CellGuard.Cell));
            var row = string.Create(
                CultureInfo.InvariantCulture,
                $"{one.Run},{one.Elapsed.TotalSeconds},{PictureJson.TimeOf(one.Utc)},{one.Kind},{words}\n");
            await context.Response.WriteAsync(row, context.RequestAborted);
        }
    }

    private async Task SendEventsJsonAsync(SpanQuery span, HttpContext context)
    {
        var events = new List<EventAnswer>();
        await foreach (var one in EventsAsync(span, context.RequestAborted))
        {
            events.Add(RecordEndpoints.AnswerOf(one));
        }

        await Body.WriteAsync(context, new EventsAnswer(events), ApiJson.Default.EventsAnswer);
    }

    private async IAsyncEnumerable<RecordedEvent> EventsAsync(
        SpanQuery span, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var one in record.ReadEventsAsync(span.From, span.To, cancellationToken))
        {
            if (one.Kind != RecordedEvent.JourneyKind)
            {
                yield return one;
            }
        }
    }
}
