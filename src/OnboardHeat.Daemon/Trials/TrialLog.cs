using Microsoft.Extensions.Logging;

namespace OnboardHeat.Daemon.Trials;

/// <summary>What the trials write to the log.</summary>
internal static partial class TrialLog
{
    [LoggerMessage(
        Level = LogLevel.Information, Message = "daily trial of the warning chain: {Stories} staged failures came out")]
    public static partial void Passed(ILogger log, int stories);

    [LoggerMessage(
        Level = LogLevel.Error, Message = "daily trial of the warning chain: {Alarm} did not come out: {Why}")]
    public static partial void Failed(ILogger log, string alarm, string why);

    [LoggerMessage(Level = LogLevel.Information, Message = "self-test: {Line}")]
    public static partial void SelfTestReady(ILogger log, string line);

    [LoggerMessage(Level = LogLevel.Warning, Message = "self-test: {Line}")]
    public static partial void SelfTestNotReady(ILogger log, string line);
}
