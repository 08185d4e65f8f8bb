using System.Globalization;
using System.Text;

namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// One screen of lines being written. It knows how wide dressed text shows, and keeps within the terminal.
/// </summary>
internal sealed class Sheet(int width, int height)
{
    private readonly List<string> _lines = [];

    /// <summary>Columns that can be written on.</summary>
    public int Width => width;

    /// <summary>Lines still free.</summary>
    public int Free => height - _lines.Count;

    public void Add(string line = "")
    {
        if (Free > 0)
        {
            _lines.Add(line);
        }
    }

    /// <summary>Two texts beside each other, the right one from a column on.</summary>
    public void Add(string left, string right, int column) =>
        Add(right.Length == 0 ? left : left + new string(' ', Math.Max(1, column - Shown(left))) + right);

    /// <summary>Text in lines no wider than the sheet, each after the first further in.</summary>
    public void Wrap(string first, string text, string further)
    {
        var line = first;
        foreach (var word in text.Split(' '))
        {
            if (Shown(line) + 1 + Shown(word) > width && Shown(line) > Shown(further))
            {
                Add(line);
                line = further;
            }

            line += (line.Length == 0 || line[^1] == ' ' ? "" : " ") + word;
        }

        Add(line);
    }

    /// <summary>
    /// The whole screen from its upper left corner; the rest of each line and of the screen is cleared.
    /// </summary>
    public string Drawn()
    {
        var text = new StringBuilder("\x1b[H");
        foreach (var line in _lines)
        {
            text.Append(line).Append("\x1b[K\r\n");
        }

        // The last line break would scroll a full screen.
        text.Length -= _lines.Count >= height && _lines.Count > 0 ? 2 : 0;
        return text.Append("\x1b[J").ToString();
    }

    /// <summary>The same as plain text.</summary>
    public string Written() => string.Join('\n', _lines.Select(l => l.TrimEnd())) + "\n";

    /// <summary>Columns that a text takes, its colours left out.</summary>
    public static int Shown(string text)
    {
        var count = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\x1b')
            {
                i = text.IndexOf('m', i);
                continue;
            }

            count += char.GetUnicodeCategory(text[i]) == UnicodeCategory.NonSpacingMark ? 0 : 1;
        }

        return count;
    }
}
