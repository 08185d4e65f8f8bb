using System.Text;
using nietras.SeparatedValues;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Imports;

/// <summary>The rows of a separated file as texts, with their line numbers; blank ones are passed over.</summary>
internal static class ForeignRows
{
    /// <summary>Reads them; a file that is no such text is a <see cref="RecordingException"/>.</summary>
    public static IEnumerable<(int Line, string[] Cells)> Read(string file, Stream stream, char separator)
    {
        using var text = new StreamReader(stream, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
        using var reader = Opened(file, text, separator);
        while (HasMore(file, reader))
        {
            var row = reader.Current;
            var cells = new string[row.ColCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = row[i].ToString().Trim();
            }

            if (cells.Any(cell => cell.Length > 0))
            {
                yield return (row.LineNumberFrom, cells);
            }
        }
    }

    private static SepReader Opened(string file, StreamReader text, char separator)
    {
        try
        {
            return Sep.New(separator)
                .Reader(o => o with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
                .From(text);
        }
        catch (Exception e) when (e is NotSupportedException or InvalidDataException or ArgumentException)
        {
            throw new RecordingException(file, "this is no text of columns: " + Shown.Briefly(e.Message));
        }
    }

    private static bool HasMore(string file, SepReader reader)
    {
        try
        {
            return reader.MoveNext();
        }
        catch (Exception e) when (e is NotSupportedException or InvalidDataException)
        {
            throw new RecordingException(file, "a line is too long or has an open quote; this is no text of columns");
        }
    }
}
