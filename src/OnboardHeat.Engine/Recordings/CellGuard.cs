using System.Buffers;
using System.Text;

namespace OnboardHeat.Engine.Recordings;

/// <summary>
/// Text from people as a cell of a CSV file: quoted as RFC 4180 has it, and harmless in a spreadsheet. A spreadsheet
/// takes a cell that begins with <c>= + - @</c>, a tab or a line break for a formula, and one that splits lines at
/// other marks than commas finds cells in the middle of a text; an apostrophe before the mark makes it text (OWASP,
/// "CSV injection").
/// </summary>
public static class CellGuard
{
    private const char Guard = '\'';

    private static readonly SearchValues<char> s_quoted = SearchValues.Create(",;\t\"\r\n");

    /// <summary>The cell as it stands in the file.</summary>
    public static string Cell(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var guarded = Guarded(Sound(text));
        return guarded.AsSpan().IndexOfAny(s_quoted) < 0 ? guarded
            : $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    /// <summary>Without the mark of bytes that were no text: a reader takes that for a damaged file.</summary>
    private static string Sound(string text) =>
        Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)).Replace('\uFFFD', '?');

    private static string Guarded(string text)
    {
        var guarded = new StringBuilder(text.Length + 2);
        var isStart = true;
        foreach (var c in text)
        {
            if (isStart && c is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n')
            {
                guarded.Append(Guard);
            }

            guarded.Append(c);

            // Blanks and quotes at a cell's beginning are passed over by some programs, so the beginning lasts over
            // them.
            isStart = c is ',' or ';' or '\t' or '\r' or '\n' or '"' || (isStart && c is ' ');
        }

        return guarded.ToString();
    }
}
