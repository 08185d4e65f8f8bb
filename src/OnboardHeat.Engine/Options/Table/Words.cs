using System.Text;
using System.Text.Json;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Options.Table;

/// <summary>Foreign values as they stand in a message.</summary>
internal static class Words
{
    /// <summary>The value that the reader stands on, as written.</summary>
    public static string Of(ref Utf8JsonReader json) => json.TokenType switch
    {
        JsonTokenType.String => $"'{Brief(json.GetString()!)}'",
        _ => Brief(Encoding.UTF8.GetString(json.ValueSpan)),
    };

    /// <summary>A foreign text, cut short and on one line.</summary>
    public static string Brief(string text) => Shown.Briefly(text);
}
