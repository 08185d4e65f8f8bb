using System.Net;
using Microsoft.Extensions.Logging;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// Writes down who was let in, who was not, and what was done by page. No code, cookie or token ever comes into it.
/// Whoever knocks without end fills no journal: refusals beyond so many a minute are counted, and their number is told.
/// </summary>
internal sealed partial class AuditLog(ILogger log, TimeProvider time)
{
    /// <summary>Enough to see who tries what; a journal on a card is spared.</summary>
    public const int MostRefusalsAMinute = 12;

    private readonly Lock _lock = new();
    private long _minuteBegan = time.GetTimestamp();
    private int _inMinute;

    public void Paired(string phone, IPAddress? from) => LogPaired(log, phone, from);

    public void Acted(string phone, string action, string target, bool isTaken) =>
        LogActed(log, phone, action, target, isTaken);

    public void NotWritten(string why) => LogNotWritten(log, why);

    public void Refused(string what, IPAddress? from)
    {
        lock (_lock)
        {
            if (time.GetElapsedTime(_minuteBegan) >= TimeSpan.FromMinutes(1))
            {
                if (_inMinute > MostRefusalsAMinute)
                {
                    LogMore(log, _inMinute - MostRefusalsAMinute);
                }

                _minuteBegan = time.GetTimestamp();
                _inMinute = 0;
            }

            if (++_inMinute > MostRefusalsAMinute)
            {
                return;
            }
        }

        LogRefused(log, what, from);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "page: phone {Phone} paired from {From}")]
    private static partial void LogPaired(ILogger log, string phone, IPAddress? from);

    [LoggerMessage(
        Level = LogLevel.Information, Message = "page: phone {Phone} did {Action} {Target}, taken {IsTaken}")]
    private static partial void LogActed(ILogger log, string phone, string action, string target, bool isTaken);

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "page: phones cannot be written down and are known until the daemon ends: {Why}")]
    private static partial void LogNotWritten(ILogger log, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "page: refused {What} from {From}")]
    private static partial void LogRefused(ILogger log, string what, IPAddress? from);

    [LoggerMessage(Level = LogLevel.Warning, Message = "page: refused {Count} more in that minute")]
    private static partial void LogMore(ILogger log, int count);
}
