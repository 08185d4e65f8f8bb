using System.Globalization;
using System.Text;
using nietras.SeparatedValues;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Pictures;

namespace OnboardHeat.Engine.Recordings;

/// <summary>
/// Reads a recorded drive, scan by scan, without holding more than one row. Rows of equal time are one scan. Whatever
/// is wrong with the file is a <see cref="RecordingException"/> that names file, line and column.
/// </summary>
public sealed class RecordingReader : IDisposable
{
    /// <summary>Longest line in characters: far above any real row, far below what hurts.</summary>
    private const int LineMaxLength = 65_536;

    /// <summary>Size beyond which a number is no temperature that any probe could report, broken or not.</summary>
    private const double CelsiusMaxSize = 1e6;

    /// <summary>Longest run in seconds: thirty years.</summary>
    private const double ElapsedMaxS = 1e9;

    private const int HeaderLine = 1;

    private readonly string _file;
    private readonly SepReader _reader;
    private readonly RecordingColumns _columns;
    private RecordingRow _next = new();
    private RecordingRow _row = new();
    private bool _hasNext;
    private DateTimeOffset _runBegan;

    private RecordingReader(string file, SepReader reader)
    {
        _file = file;
        _reader = reader;
        _columns = ReadHeader();
        _hasNext = TryReadRow(_next);
        if (!_hasNext)
        {
            throw new RecordingException(file, "there is a header and no row");
        }

        Begin(_next);
    }

    /// <summary>Channels and signals that have a column: what this van has fitted.</summary>
    public FittedSet Fitted => _columns.Fitted;

    /// <summary>Opens a recording.</summary>
    /// <param name="file">The file's name for messages.</param>
    /// <param name="stream">Its bytes; closed with the reader.</param>
    /// <exception cref="RecordingException">The header or the first row cannot be taken.</exception>
    public static RecordingReader Open(string file, Stream stream)
    {
        // Bytes that are no UTF-8 become the replacement character, so that the fault is found in its cell and has a
        // place.
        var text = new StreamReader(
            stream, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true, bufferSize: 65_536);
        SepReader? reader = null;
        try
        {
            reader = Sep.New(',')
                .Reader(o => o with { HasHeader = false, Unescape = true, DisableColCountCheck = true }).From(text);
            return new RecordingReader(file, reader);
        }
        catch (Exception e)
        {
            reader?.Dispose();
            text.Dispose();
            if (e is NotSupportedException or InvalidDataException or ArgumentException)
            {
                throw new RecordingException(file, "this is no CSV text: " + Shown.Briefly(e.Message));
            }

            throw;
        }
    }

    /// <summary>Fills the scan with the next one of the file. False at the end.</summary>
    /// <exception cref="RecordingException">A row cannot be taken.</exception>
    public bool Read(Scan scan)
    {
        ArgumentNullException.ThrowIfNull(scan);
        if (!_hasNext)
        {
            return false;
        }

        (_row, _next) = (_next, _row);
        var elapsedS = _row.ElapsedS!.Value;
        scan.Clear();
        scan.Run = _row.Run;
        scan.Elapsed = TimeSpan.FromTicks((long)Math.Round(elapsedS * TimeSpan.TicksPerSecond));
        scan.Utc = _row.Utc;
        scan.IsUtcTrusted = _row.Utc is not null;
        _row.AddTo(scan);
        while ((_hasNext = TryReadRow(_next)) && !Follows(_next))
        {
            if (_next.AddTo(scan) is { } twice)
            {
                throw new RecordingException(_file, _next.Line, twice, "given twice at the same time");
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public void Dispose() => _reader.Dispose();

    private RecordingColumns ReadHeader()
    {
        if (!_reader.MoveNext())
        {
            throw new RecordingException(_file, "the file is empty");
        }

        var row = _reader.Current;
        if (row.Span.Length > LineMaxLength)
        {
            throw new RecordingException(
                _file, HeaderLine, "", $"the line is {row.Span.Length} characters long; this is no recording");
        }

        var names = new string[row.ColCount];
        for (var i = 0; i < names.Length; i++)
        {
            names[i] = row[i].ToString();
        }

        return RecordingColumns.Read(_file, HeaderLine, names);
    }

    /// <summary>
    /// Whether the row begins a new scan (and works out its elapsed time), or belongs to the one before.
    /// </summary>
    private bool Follows(RecordingRow row)
    {
        if (row.Run != _row.Run)
        {
            if (row.Run < _row.Run)
            {
                throw new RecordingException(_file, row.Line, "run", $"goes back from {_row.Run} to {row.Run}");
            }

            Begin(row);
            return true;
        }

        if (!_columns.HasElapsed)
        {
            row.ElapsedS = (row.Utc!.Value - _runBegan).TotalSeconds;
        }

        if (row.ElapsedS < _row.ElapsedS)
        {
            var back = (_row.ElapsedS - row.ElapsedS).Value.ToString("0.###", CultureInfo.InvariantCulture);
            throw new RecordingException(
                _file, row.Line, _columns.HasElapsed ? "elapsed_s" : "time", $"goes back by {back} s");
        }

        return row.ElapsedS > _row.ElapsedS;
    }

    private void Begin(RecordingRow row)
    {
        if (!_columns.HasElapsed)
        {
            _runBegan = row.Utc!.Value;
            row.ElapsedS = 0;
        }
    }

    private bool TryReadRow(RecordingRow into)
    {
        try
        {
            while (_reader.MoveNext())
            {
                var row = _reader.Current;
                if (row.ColCount > 1 || row.Span.Length > 0)
                {
                    Take(row, into);
                    return true;
                }
            }
        }
        catch (Exception e) when (e is NotSupportedException or InvalidDataException)
        {
            throw new RecordingException(
                _file, _row.Line + 1, "", "the line is too long or has an open quote; this is no recording");
        }

        return false;
    }

    private void Take(SepReader.Row row, RecordingRow into)
    {
        into.Clear();
        into.Line = row.LineNumberFrom;
        if (row.Span.Length > LineMaxLength)
        {
            throw new RecordingException(
                _file, into.Line, "", $"the line is {row.Span.Length} characters long; a quote may be open");
        }

        if (row.ColCount != _columns.Count)
        {
            throw new RecordingException(
                _file, into.Line, "",
                $"{row.ColCount} cells under a header of {_columns.Count}; decimals take a point, not a comma");
        }

        for (var i = 0; i < _columns.Count; i++)
        {
            var cell = row[i].Span;
            if (!cell.IsEmpty)
            {
                TakeCell(cell, _columns[i], into);
            }
        }

        if (_columns.HasElapsed && into.ElapsedS is null)
        {
            throw new RecordingException(_file, into.Line, "elapsed_s", "is empty; it orders the rows");
        }

        if (!_columns.HasElapsed && into.Utc is null)
        {
            throw new RecordingException(_file, into.Line, "time", "is empty; only with 'elapsed_s' may it be");
        }
    }

    private void TakeCell(ReadOnlySpan<char> cell, RecordingColumn column, RecordingRow into)
    {
        switch (column.Kind)
        {
            case RecordingColumnKind.Time:
                into.Utc = IsoTime.TryParse(cell, out var utc)
                    ? utc
                    : throw Wrong(cell, column, into, "is no ISO 8601 time with an offset, as 2026-05-03T09:12:41Z is");
                break;
            case RecordingColumnKind.Run:
                into.Run = int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var run) && run > 0
                    ? run
                    : throw Wrong(cell, column, into, "is no run number; those are whole and start at 1");
                break;
            case RecordingColumnKind.Elapsed:
                into.ElapsedS = TryNumber(cell, out var elapsedS) && elapsedS is >= 0 and <= ElapsedMaxS
                    ? elapsedS
                    : throw Wrong(cell, column, into, "is no number of seconds from 0 on");
                break;
            case RecordingColumnKind.Action:
                into.Action = PersonAction.TryParse(cell, out var action) && !cell.Contains('\uFFFD')
                    ? action
                    : throw Wrong(cell, column, into, "is no action");
                break;
            case RecordingColumnKind.House:
                into.House = HouseReport.TryParse(cell, out var house)
                    ? house
                    : throw Wrong(cell, column, into, "is no report of the house");
                break;
            case RecordingColumnKind.Channel:
                into.SetReading(column.Index, TryReading(cell, out var reading)
                    ? reading
                    : throw Wrong(
                        cell, column, into, "is no temperature; decimals take a point, 'no reading' is an empty cell"));
                break;
            default:
                into.SetSignal(column.Index, cell is "1" || (cell is "0"
                    ? false
                    : throw Wrong(cell, column, into, "is no signal; those are 0 or 1")));
                break;
        }
    }

    /// <summary>A temperature, or the name of why there is none.</summary>
    private static bool TryReading(ReadOnlySpan<char> cell, out Reading reading)
    {
        if (TryNumber(cell, out var celsius) && Math.Abs(celsius) <= CelsiusMaxSize)
        {
            reading = Reading.Of(celsius);
            return true;
        }

        var isFault = PublicNames.TryParseFault(cell, out var fault);
        reading = Reading.Failed(fault);
        return isFault;
    }

    private static bool TryNumber(ReadOnlySpan<char> cell, out double value) =>
        double.TryParse(
            cell,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture,
            out value)
        && double.IsFinite(value);

    private RecordingException Wrong(ReadOnlySpan<char> cell, RecordingColumn column, RecordingRow row, string what) =>
        new(_file, row.Line, column.Name, $"'{Shown.Briefly(cell)}' {what}");
}
