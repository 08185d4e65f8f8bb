namespace OnboardHeat.Engine.Recordings;

/// <summary>A recording that cannot be taken. Its message is one line that names file, line and column.</summary>
public sealed class RecordingException : Exception
{
    /// <summary>A fault at a place.</summary>
    /// <param name="file">The file as the person named it.</param>
    /// <param name="line">Line in the file, from 1.</param>
    /// <param name="column">The column's name as in the header; empty when the fault concerns the whole line.</param>
    /// <param name="what">What is wrong, and where it helps what to do.</param>
    public RecordingException(string file, long line, string column, string what)
        : base(column.Length == 0 ? $"{file}: line {line}: {what}" : $"{file}: line {line}, column {column}: {what}")
    {
    }

    /// <summary>A fault of the file as a whole.</summary>
    public RecordingException(string file, string what)
        : base($"{file}: {what}")
    {
    }
}
