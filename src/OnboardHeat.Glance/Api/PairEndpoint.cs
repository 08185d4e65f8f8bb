using System.Globalization;
using Microsoft.AspNetCore.Http;
using OnboardHeat.Glance.Guard;

namespace OnboardHeat.Glance.Api;

/// <summary>Makes a phone known against a code.</summary>
internal sealed class PairEndpoint(PairingDesk desk, PhoneBook phones, AuditLog audit, TimeProvider time)
{
    public async Task ServeAsync(HttpContext context)
    {
        if (await Body.ReadAsync(context, ApiJson.Default.PairRequest) is not { } asked)
        {
            return;
        }

        var code = new string([.. (asked.Code ?? "").Where(char.IsAsciiDigit)]);
        var works = desk.Redeem(code, context.Connection.RemoteIpAddress, out var wait);
        if (wait > TimeSpan.Zero)
        {
            context.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds)
                .ToString(CultureInfo.InvariantCulture);
            await Body.SayAsync(
                context, StatusCodes.Status429TooManyRequests,
                "Wrong codes were tried: wait a moment, then try again.");
            return;
        }

        if (!works)
        {
            audit.Refused("pair", context.Connection.RemoteIpAddress);
            await Body.SayAsync(
                context, StatusCodes.Status403Forbidden,
                "This code does not work. 'onboardheat pair' prints a new one.");
            return;
        }

        var name = (asked.Name ?? "").Trim();
        var (phone, cookie, token) = phones.Add(name.Length > 40 ? name[..40] : name, time.GetUtcNow());
        audit.Paired(phone.Id, context.Connection.RemoteIpAddress);
        if (phones.Trouble is { } trouble)
        {
            audit.NotWritten(trouble);
        }

        context.Response.Cookies.Append(Gate.CookieName, cookie, new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            Path = "/",
            MaxAge = TimeSpan.FromDays(400),
        });
        await Body.WriteAsync(context, new PairAnswer(phone.Id, token), ApiJson.Default.PairAnswer);
    }
}
