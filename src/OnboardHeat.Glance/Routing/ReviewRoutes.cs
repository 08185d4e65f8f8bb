using Microsoft.AspNetCore.Http;
using OnboardHeat.Core;
using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;
using OnboardHeat.Glance.Api;
using OnboardHeat.Glance.Assets;
using OnboardHeat.Glance.Report;

namespace OnboardHeat.Glance.Routing;

/// <summary>Routes of the review: journeys, comparisons, the report and files to take away.</summary>
internal static class ReviewRoutes
{
    private const string Journeys = "Journeys between two times, with their figures.";
    private const string Compare = "Two spans laid over each other, on the start and surroundings of the first.";
    private const string Insulation = "Whether the tank loses less than before a change mark, and what that rests on.";
    private const string ReportOfTrip = "The report of a trip as one HTML file.";
    private const string Files = "Readings, journeys or events between two times as a CSV or JSON file.";

    public static IEnumerable<Route> For(GlanceSettings settings, GlancePorts ports, PageAssets assets)
    {
        yield return new("GET", "/compare", Access.Shell, "The comparison.", context =>
            assets.SendAsync(context, "compare.html"));
        var (journeys, compare, insulation, report, files) = (None, None, None, None, None);
        if (ports is { Record: { } record, Van: { } van })
        {
            var review = new ReviewEndpoints(record, van);
            journeys = review.ServeJourneysAsync;
            compare = review.ServeCompareAsync;
            insulation = review.ServeInsulationAsync;
            report = new ReportEndpoint(new TripReport(record, van, settings.VanId, ports.Time)).ServeAsync;
            files = new DownloadEndpoint(record, review.Book, van.Fitted).ServeAsync;
        }

        yield return new("GET", "/api/v1/journeys", Access.Reading, Journeys, journeys);
        yield return new("GET", "/api/v1/compare", Access.Reading, Compare, compare);
        yield return new("GET", "/api/v1/insulation", Access.Reading, Insulation, insulation);
        yield return new("GET", "/api/v1/report", Access.Reading, ReportOfTrip, report);
        yield return new("GET", "/api/v1/download/{file}", Access.Reading, Files, files);
    }

    private static Func<HttpContext, Task> None { get; } =
        context => Body.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "There is no record.");
}
