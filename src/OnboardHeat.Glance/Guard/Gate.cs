using System.Net;
using Microsoft.AspNetCore.Http;
using OnboardHeat.Glance.Routing;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// Decides over every request before its route is served: right name, right method, right origin, known phone, its
/// token. Everything that is not expressly let in is refused.
/// </summary>
internal sealed class Gate(Func<string?, bool> isOurName, PhoneBook phones, bool isReadingOpen)
{
    public const string CookieName = "onboardheat-phone";
    public const string TokenHeader = "X-Onboardheat-Token";

    /// <summary>Whether this request may be served by this route.</summary>
    public Admission Admit(HttpContext context, Access access)
    {
        var request = context.Request;
        if (!isOurName(request.Host.Value))
        {
            return new Admission(421, "This name is not one of this page's own.");
        }

        if (IsForeign(request))
        {
            return new Admission(403, "Only this page itself may ask that.");
        }

        return access switch
        {
            Access.Shell => Admission.Granted,
            Access.Reading => MayRead(context) ? Admission.Granted : new Admission(
                401, "This phone is not paired: run 'onboardheat pair' and open /pair."),
            Access.Pairing => IsJson(request) ? Admission.Granted : new Admission(415, "JSON is expected."),
            _ => Acting(context),
        };
    }

    /// <summary>The paired phone behind a request, if any.</summary>
    public Phone? PhoneOf(HttpContext context) => phones.ByCookie(context.Request.Cookies[CookieName]);

    private Admission Acting(HttpContext context)
    {
        var phone = PhoneOf(context);
        if (phone is null)
        {
            return new Admission(401, "This phone is not paired: run 'onboardheat pair' and open /pair.");
        }

        if (!IsJson(context.Request))
        {
            return new Admission(415, "JSON is expected.");
        }

        if (string.IsNullOrEmpty(context.Request.Headers.Origin))
        {
            return new Admission(403, "Only this page itself may ask that.");
        }

        return PhoneBook.Owns(phone, context.Request.Headers[TokenHeader])
            ? Admission.Granted
            : new Admission(403, "The token is not this phone's: pair it again.");
    }

    private bool MayRead(HttpContext context) =>
        isReadingOpen || IsThisMachine(context) || PhoneOf(context) is not null;

    private static bool IsThisMachine(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } remote && IPAddress.IsLoopback(remote);

    private static bool IsJson(HttpRequest request) =>
        request.ContentType is { } type && type.StartsWith("application/json", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a browser says that another site caused the request.</summary>
    private static bool IsForeign(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0 && !(Uri.TryCreate(origin, UriKind.Absolute, out var from)
            && from.Authority.Equals(request.Host.Value, StringComparison.OrdinalIgnoreCase)))
        {
            return true;
        }

        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var isNavigation = HttpMethods.IsGet(request.Method)
            && request.Headers["Sec-Fetch-Mode"].ToString() == "navigate";
        return site is "cross-site" or "same-site" && !isNavigation;
    }
}
