using Microsoft.AspNetCore.Http;
using OnboardHeat.Glance.Report;

namespace OnboardHeat.Glance.Api;

/// <summary>Gives the report of a trip as a file to keep.</summary>
internal sealed class ReportEndpoint(TripReport report)
{
    public async Task ServeAsync(HttpContext context)
    {
        if (await SpanQuery.ReadAsync(context) is not var (from, to))
        {
            return;
        }

        var isShared = context.Request.Query["share"] == "1";
        using var page = new MemoryStream();
        if (!await report.WriteAsync(new ReportRequest(from, to, isShared), page, context.RequestAborted))
        {
            await Body.SayAsync(context, StatusCodes.Status404NotFound, "Nothing is on record in this time.");
            return;
        }

        context.Response.ContentType = "text/html; charset=utf-8";
        context.Response.Headers.ContentDisposition =
            $"attachment; filename=\"trip{(isShared ? "-to-share" : "")}.html\"";
        context.Response.ContentLength = page.Length;
        page.Position = 0;
        await page.CopyToAsync(context.Response.Body, context.RequestAborted);
    }
}
