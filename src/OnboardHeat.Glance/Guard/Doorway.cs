using Microsoft.AspNetCore.Http;
using OnboardHeat.Glance.Api;
using OnboardHeat.Glance.Routing;

namespace OnboardHeat.Glance.Guard;

/// <summary>Every request comes through here: the headers that bind a browser, then the gate, then the route.</summary>
internal sealed class Doorway(Gate gate, AuditLog audit)
{
    public async Task ServeAsync(HttpContext context, Route route)
    {
        Bind(context.Response);
        var admission = gate.Admit(context, route.Access);
        if (!admission.IsGranted)
        {
            audit.Refused(route.Path, context.Connection.RemoteIpAddress);
            await Body.SayAsync(context, admission.Status, admission.Message);
            return;
        }

        await route.Serve(context);
    }

    /// <summary>
    /// What no route takes: the same answer for a wrong path and a wrong name, so that nothing is told.
    /// </summary>
    public Task RefuseAsync(HttpContext context)
    {
        Bind(context.Response);
        var admission = gate.Admit(context, Access.Shell);
        return Body.SayAsync(
            context, admission.IsGranted ? StatusCodes.Status404NotFound : admission.Status, "There is nothing here.");
    }

    private static void Bind(HttpResponse response)
    {
        var headers = response.Headers;
        headers.ContentSecurityPolicy =
            "default-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'; object-src 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
    }
}
