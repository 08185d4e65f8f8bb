using System.Text;

namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// Figures three lines tall, of half blocks: five rows of pixels on three rows of text, each pixel two columns wide.
/// </summary>
internal static class BigFigures
{
    public const int Lines = 3;

    private const string Known = "0123456789.-";

    /// <summary>Rows of each figure from the top, three pixels a row, the leftmost the highest bit.</summary>
    private static readonly int[][] s_rows =
    [
        [7, 5, 5, 5, 7], [2, 6, 2, 2, 7], [7, 1, 7, 4, 7], [7, 1, 7, 1, 7], [5, 5, 7, 1, 1], [7, 4, 7, 1, 7],
        [7, 4, 7, 5, 7],
        [7, 1, 1, 2, 2], [7, 5, 7, 5, 7], [7, 5, 7, 1, 7], [0, 0, 0, 0, 2], [0, 0, 7, 0, 0],
    ];

    /// <summary>One of the three lines of a number written with digits, point and minus.</summary>
    public static string Line(string number, int line)
    {
        var text = new StringBuilder();
        foreach (var sign in number)
        {
            var figure = Known.IndexOf(sign, StringComparison.Ordinal);
            if (figure < 0)
            {
                continue;
            }

            var rows = s_rows[figure];
            var upper = rows[2 * line];
            var lower = (2 * line) + 1 < rows.Length ? rows[(2 * line) + 1] : 0;
            var isPoint = sign == '.';
            for (var column = isPoint ? 1 : 2; column >= (isPoint ? 1 : 0); column--)
            {
                var bit = 1 << column;
                text.Append(
                    (upper & bit, lower & bit) switch { (0, 0) => "  ", (_, 0) => "▀▀", (0, _) => "▄▄", _ => "██" });
            }

            text.Append("  ");
        }

        return text.ToString();
    }
}
