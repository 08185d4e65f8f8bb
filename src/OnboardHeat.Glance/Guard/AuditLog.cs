using System.Net;
using Microsoft.Extensions.Logging;

namespace OnboardHeat.Glance.Guard;

/// <summary>Writes down who was let in, who was not, and what was done by page. No code, cookie or token ever comes into it.</summary>
internal sealed partial class AuditLog(ILogger log)
{
    public void Paired(string phone, IPAddress? from) => LogPaired(log, phone, from);

    public void Acted(string phone, string action, string target, bool isTaken) => LogActed(log, phone, action, target, isTaken);

    public void Refused(string what, IPAddress? from) => LogRefused(log, what, from);

    [LoggerMessage(Level = LogLevel.Warning, Message = "page: phone {Phone} paired from {From}")]
    private static partial void LogPaired(ILogger log, string phone, IPAddress? from);

    [LoggerMessage(Level = LogLevel.Information, Message = "page: phone {Phone} did {Action} {Target}, taken {IsTaken}")]
    private static partial void LogActed(ILogger log, string phone, string action, string target, bool isTaken);

    [LoggerMessage(Level = LogLevel.Warning, Message = "page: refused {What} from {From}")]
    private static partial void LogRefused(ILogger log, string what, IPAddress? from);
}
