using Microsoft.Extensions.Logging;

namespace OnboardHeat.Outputs.Pins;

/// <summary>Every line that this project writes to the log.</summary>
internal static partial class OutputsLog
{
    [LoggerMessage(Level = LogLevel.Warning, Message = "{Output}: {Reason}; alarms go on, trying again")]
    public static partial void OutputGone(this ILogger log, string output, string reason);

    [LoggerMessage(Level = LogLevel.Information, Message = "{Output}: works")]
    public static partial void OutputWorks(this ILogger log, string output);

    [LoggerMessage(
        Level = LogLevel.Warning, Message = "button: pressed for a minute, taken for stuck until it is released")]
    public static partial void ButtonStuck(this ILogger log);

    [LoggerMessage(Level = LogLevel.Information, Message = "{Action} by button")]
    public static partial void Ordered(this ILogger log, string action);

    [LoggerMessage(Level = LogLevel.Information, Message = "lamp and buzzer tested")]
    public static partial void Tested(this ILogger log);
}
