using Microsoft.AspNetCore.Http;
using OnboardHeat.Glance.Api;
using OnboardHeat.Glance.Assets;
using OnboardHeat.Glance.Guard;
using OnboardHeat.Glance.Live;

namespace OnboardHeat.Glance.Routing;

/// <summary>
/// The one list of routes. What is not here is not served; the interface description and the security tests are made
/// from it.
/// </summary>
internal static class RouteTable
{
    public static IReadOnlyList<Route> For(
        GlanceSettings settings, GlancePorts ports, LivePages pages, Gate gate, AuditLog audit, PairingDesk desk,
        PhoneBook phones,
        CancellationToken stopping)
    {
        var assets = new PageAssets();
        var live = new LiveStream(pages, settings.LongestScanPeriod, ports.Time, stopping);
        var actions = new ActionsEndpoint(ports.Inbox, gate, audit);
        var pairing = new PairEndpoint(desk, phones, audit, ports.Time);
        var record = new RecordEndpoints(ports.Record);
        return
        [
            new("GET", "/", Access.Shell, "The glance.", context => assets.SendAsync(context, "glance.html")),
            new("GET", "/review", Access.Shell, "The review.", context => assets.SendAsync(context, "review.html")),
            new("GET", "/pair", Access.Shell, "Where a phone enters its code.", context => assets.SendAsync(
                context, "pair.html")),
            new("GET", "/assets/{name}", Access.Shell, "Styles and scripts of the pages.", context => assets.SendAsync(
                context, NameOf(context))),
            new("GET", "/api/v1/openapi.json", Access.Shell, "This description.", context => assets.SendAsync(
                context, "openapi.json")),
            new("GET", "/api/v1/session", Access.Reading, "What this browser may do.", context => Body.WriteAsync(
                context, new SessionAnswer(gate.PhoneOf(context) is not null, settings.VanId),
                ApiJson.Default.SessionAnswer)),
            new("GET", "/api/v1/picture", Access.Reading, "The newest picture.", context => SendPictureAsync(
                context, pages)),
            new(
                "GET", "/api/v1/live", Access.Reading, "Pictures as they come, as server-sent events.",
                live.ServeAsync),
            new("GET", "/api/v1/chart", Access.Reading, "Lines of a chart between two times.", record.ServeChartAsync),
            new(
                "GET", "/api/v1/events", Access.Reading, "Alarms, actions and marks between two times.",
                record.ServeEventsAsync),
            new(
                "GET", "/api/v1/runs", Access.Reading, "Every run on record and how its dates can be believed.",
                record.ServeRunsAsync),
            .. ReviewRoutes.For(settings, ports, assets),
            new("POST", "/api/v1/pair", Access.Pairing, "Makes a phone known against a code.", pairing.ServeAsync),
            new(
                "POST", "/api/v1/actions", Access.Acting, "Does something: acknowledge, shelve, repaired and so on.",
                actions.ServeAsync),
        ];
    }

    private static string NameOf(HttpContext context) => context.Request.RouteValues["name"] as string ?? "";

    private static async Task SendPictureAsync(HttpContext context, LivePages pages)
    {
        if (pages.Latest is not { } picture)
        {
            await Body.SayAsync(context, StatusCodes.Status503ServiceUnavailable, "No picture yet.");
            return;
        }

        context.Response.ContentType = "application/json";
        await context.Response.Body.WriteAsync(picture, context.RequestAborted);
    }
}
