using Microsoft.Extensions.Logging;

namespace OnboardHeat.Messaging.Supervision;

/// <summary>Every line that this project writes to the log.</summary>
internal static partial class MessagingLog
{
    [LoggerMessage(Level = LogLevel.Information, Message = "broker {Broker}: connected, publishing under {Root}")]
    public static partial void Connected(this ILogger log, string broker, string root);

    [LoggerMessage(
        Level = LogLevel.Information,
        Message = "broker {Broker}: connected again after {Tries} tries in {Minutes:F1} min, publishing under {Root}")]
    public static partial void ConnectedAgain(this ILogger log, string broker, int tries, double minutes, string root);

    [LoggerMessage(Level = LogLevel.Warning, Message = "broker {Broker}: {Reason}; alarms go on, trying again")]
    public static partial void Away(this ILogger log, string broker, string reason);

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "broker {Broker}: {Reason}; still away after {Tries} tries in {Minutes:F0} min")]
    public static partial void StillAway(this ILogger log, string broker, string reason, int tries, double minutes);

    [LoggerMessage(
        Level = LogLevel.Information,
        Message = "broker {Broker}: the clock was set by {Seconds:F0} s, connecting anew")]
    public static partial void ClockWasSet(this ILogger log, string broker, double seconds);

    [LoggerMessage(Level = LogLevel.Information, Message = "action {Action} by broker, id {Id}: {Result} {Why}")]
    public static partial void Asked(this ILogger log, string action, string id, string result, string why);
}
