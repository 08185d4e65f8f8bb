using System.Globalization;
using Serilog.Events;
using Serilog.Formatting;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// One line a message. For the journal it begins with the priority as sd-daemon(3) spells it and leaves the time to the
/// journal; elsewhere it begins with time and level.
/// </summary>
internal sealed class JournalLine(bool isJournal) : ITextFormatter
{
    public void Format(LogEvent logEvent, TextWriter output)
    {
        if (isJournal)
        {
            output.Write('<');
            output.Write(PriorityOf(logEvent.Level));
            output.Write('>');
        }
        else
        {
            output.Write(
                logEvent.Timestamp.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z' ", CultureInfo.InvariantCulture));
            output.Write(NameOf(logEvent.Level));
            output.Write(' ');
        }

        output.Write(OneLine(Plain(logEvent)));
        if (logEvent.Exception is { } exception)
        {
            output.Write(": ");
            output.Write(OneLine(exception.ToString()));
        }

        output.Write('\n');
    }

    /// <summary>Texts stand in messages without quotation marks: they are sentences for people.</summary>
    private static string Plain(LogEvent logEvent)
    {
        using var words = new StringWriter(CultureInfo.InvariantCulture);
        foreach (var token in logEvent.MessageTemplate.Tokens)
        {
            if (token is Serilog.Parsing.PropertyToken { PropertyName: var name }
                && logEvent.Properties.TryGetValue(name, out var value) && value is ScalarValue { Value: string text })
            {
                words.Write(text);
            }
            else
            {
                token.Render(logEvent.Properties, words, CultureInfo.InvariantCulture);
            }
        }

        return words.ToString();
    }

    private static string OneLine(string text) => text.ReplaceLineEndings(" | ");

    private static int PriorityOf(LogEventLevel level) => level switch
    {
        LogEventLevel.Fatal => 2,
        LogEventLevel.Error => 3,
        LogEventLevel.Warning => 4,
        LogEventLevel.Information => 6,
        _ => 7,
    };

    private static string NameOf(LogEventLevel level) => level switch
    {
        LogEventLevel.Fatal => "CRITICAL",
        LogEventLevel.Error => "ERROR",
        LogEventLevel.Warning => "WARNING",
        LogEventLevel.Information => "info",
        _ => "debug",
    };
}
