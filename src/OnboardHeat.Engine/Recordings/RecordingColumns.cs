using System.Globalization;
using OnboardHeat.Core.Scans;

namespace OnboardHeat.Engine.Recordings;

/// <summary>What each column of a recording is, from its header row.</summary>
internal sealed class RecordingColumns
{
    private readonly RecordingColumn[] _columns;

    private RecordingColumns(RecordingColumn[] columns)
    {
        _columns = columns;
        Fitted = new FittedSet(
            columns.Where(c => c.Kind == RecordingColumnKind.Channel).Select(c => (Channel)c.Index),
            columns.Where(c => c.Kind == RecordingColumnKind.Signal).Select(c => (Signal)c.Index));
    }

    /// <summary>Number of columns.</summary>
    public int Count => _columns.Length;

    /// <summary>Channels and signals that have a column.</summary>
    public FittedSet Fitted { get; }

    /// <summary>Whether elapsed seconds order the rows; else wall-clock time does.</summary>
    public bool HasElapsed => Has(RecordingColumnKind.Elapsed);

    /// <summary>The column at a place.</summary>
    public RecordingColumn this[int index] => _columns[index];

    /// <summary>Reads a header row.</summary>
    /// <exception cref="RecordingException">
    /// A column is unknown or named twice, or the file has no order or no reading.
    /// </exception>
    public static RecordingColumns Read(string file, long line, IReadOnlyList<string> names)
    {
        var columns = new RecordingColumn[names.Count];
        for (var i = 0; i < columns.Length; i++)
        {
            if (!TryParse(names[i], out columns[i]))
            {
                throw new RecordingException(
                    file, line, Ordinal(i), $"'{Shown.Briefly(names[i])}' is no column of a recording");
            }

            if (columns[..i].Any(c => c.Name == names[i]))
            {
                throw new RecordingException(file, line, names[i], "the header names this column twice");
            }
        }

        var read = new RecordingColumns(columns);
        if (!read.HasElapsed && !read.Has(RecordingColumnKind.Time))
        {
            throw new RecordingException(file, line, "", "the header has neither 'time' nor 'elapsed_s'");
        }

        if (!read.Has(RecordingColumnKind.Channel))
        {
            throw new RecordingException(file, line, "", "the header has no temperature channel");
        }

        return read;
    }

    private static string Ordinal(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);

    private static bool TryParse(string name, out RecordingColumn column)
    {
        if (Channels.TryParse(name, out var channel))
        {
            column = new RecordingColumn(RecordingColumnKind.Channel, (int)channel, name);
            return true;
        }

        if (Signals.TryParse(name, out var signal))
        {
            column = new RecordingColumn(RecordingColumnKind.Signal, (int)signal, name);
            return true;
        }

        RecordingColumnKind? kind = name switch
        {
            "time" => RecordingColumnKind.Time,
            "run" => RecordingColumnKind.Run,
            "elapsed_s" => RecordingColumnKind.Elapsed,
            "action" => RecordingColumnKind.Action,
            "house" => RecordingColumnKind.House,
            _ => null,
        };
        column = new RecordingColumn(kind ?? default, 0, name);
        return kind is not null;
    }

    private bool Has(RecordingColumnKind kind) => _columns.Any(c => c.Kind == kind);
}
