using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// Finds out how a logger's file is to be read, from its beginning and what a person said of it. What can be read in
/// two ways is not guessed: it is refused with the words that would settle it.
/// </summary>
internal sealed class FormFinder(string file, Func<Stream> open, ImportWish wish)
{
    /// <summary>
    /// Rows looked at: enough for a preamble and for a date after the twelfth of a month in many files.
    /// </summary>
    private const int RowsSeen = 2000;

    /// <summary>A logger's preamble is no longer.</summary>
    private const int PreambleRows = 60;

    /// <summary>Semicolon and tab before comma: where they part columns, commas are decimal marks.</summary>
    private static readonly char[] s_separators = [';', '\t', '|', ','];

    /// <summary>
    /// Seconds since 1970 are above this (1973) and below a hundred times it; milliseconds are a thousand times as
    /// many.
    /// </summary>
    private const double UnixFromS = 1e8;

    private IReadOnlyList<string[]> _rows = [];
    private IReadOnlyList<string> _names = [];
    private string?[] _targets = [];
    private int _first;

    public ForeignForm Find()
    {
        var separator = wish.Separator ?? Separator();
        _rows = [.. ForeignRows.Read(file, open(), separator).Take(RowsSeen).Select(row => row.Cells)];
        _first = FirstRow();
        var hasHeader = _first > 0 && _rows[_first - 1].Length == _rows[_first].Length;
        _names = hasHeader
            ? [.. _rows[_first - 1].Select(name => name.TrimStart('#').Trim())]
            : [.. Enumerable.Range(1, _rows[_first].Length).Select(i => i.ToString(CultureInfo.InvariantCulture))];
        var (time, ofDay) = TimeColumns();
        MapReadings(time, ofDay);
        var form = new ForeignForm
        {
            File = file,
            Separator = separator,
            RowsBefore = _first,
            Names = _names,
            HasHeader = hasHeader,
            DecimalMark = DecimalMark(),
            TimeColumn = time,
            OfDayColumn = ofDay,
            TimeKind = default,
            IsMonthFirst = false,
            Targets = _targets,
        };
        return WithTime(form);
    }

    private RecordingException Wrong(string what) => new(file, what);

    private char Separator()
    {
        foreach (var candidate in s_separators)
        {
            var counts = ForeignRows.Read(file, open(), candidate)
                .Take(PreambleRows * 2).Select(row => row.Cells.Length).ToArray();
            var usual = counts.GroupBy(count => count).OrderByDescending(group => group.Count()).FirstOrDefault();
            if (usual is { Key: > 1 } && usual.Count() * 2 >= counts.Length)
            {
                return candidate;
            }
        }

        throw Wrong("no mark parts its lines into columns; name it with --separator");
    }

    /// <summary>
    /// The first row with something like a time and a number in it; the header, if any, is the row before.
    /// </summary>
    private int FirstRow()
    {
        var isDated = _rows.Any(row => row.Any(IsTime));
        for (var i = 0; i < Math.Min(_rows.Count, PreambleRows); i++)
        {
            var row = _rows[i];
            if (row.Length > 1 && row.Any(IsReading)
                && (isDated ? row.Any(IsTime) : row.All(IsReading) && row.Any(IsNumber)))
            {
                return i;
            }
        }

        throw Wrong($"none of its first {PreambleRows} rows has a time and a reading");
    }

    private static bool IsTime(string cell) => ForeignTimeText.TryParse(cell, out _);

    private static bool IsReading(string cell) => IsNumber(cell) || ForeignNumber.IsNone(cell);

    private static bool IsNumber(string cell) =>
        ForeignNumber.TryParse(cell, '.', out _) || ForeignNumber.TryParse(cell, ',', out _);

    private (int Time, int? OfDay) TimeColumns()
    {
        _targets = [.. _names.Select((name, i) => MappedTo(name, i))];
        var date = Array.IndexOf(_targets, ImportMapping.Date);
        var time = Array.IndexOf(_targets, ImportMapping.Time);
        if (date >= 0)
        {
            return (date, time >= 0 ? time : null);
        }

        var stated = time >= 0 ? time : Array.IndexOf(_targets, ImportMapping.Elapsed);
        var found = stated >= 0 ? stated
            : Array.FindIndex(_rows[_first], cell => ForeignTimeText.TryParse(cell, out _));
        return found >= 0 ? (found, null)
            : IsNumber(_rows[_first][0]) && _targets[0] is null ? (0, null)
            : throw Wrong("no column has times; say with --map COLUMN=time which does");
    }

    /// <summary>What a person said of the column, or what its name says by itself.</summary>
    private string? MappedTo(string name, int index)
    {
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        foreach (var mapping in wish.Mappings)
        {
            var source = OfThisFile(mapping.Source);
            if (source is not null && (source.Equals(name, StringComparison.OrdinalIgnoreCase) || source == number))
            {
                return mapping.Target;
            }
        }

        var plain = name.Trim().ToLowerInvariant().Replace(' ', '_').Replace('-', '_');
        return ImportMapping.IsTarget(plain) ? plain : null;
    }

    /// <summary>The column that a source names in this file; null where it names another file.</summary>
    private string? OfThisFile(string source)
    {
        foreach (var name in (string[])[file, Path.GetFileName(file)])
        {
            if (source.StartsWith(name + ":", StringComparison.Ordinal))
            {
                return source[(name.Length + 1)..];
            }
        }

        return source;
    }

    private void MapReadings(int time, int? ofDay)
    {
        _targets[time] = null;
        if (ofDay is { } other)
        {
            _targets[other] = null;
        }

        int[] values = [.. Enumerable.Range(0, _targets.Length).Where(i => i != time && i != ofDay)];
        if (values.Length == 1)
        {
            var whole = wish.Mappings.FirstOrDefault(m => m.Source.Length == 0 || m.Source == file
                || m.Source == Path.GetFileName(file));
            _targets[values[0]] = whole?.Target ?? _targets[values[0]];
        }

        if (values.All(i => _targets[i] is null))
        {
            throw Wrong($"no column is known; say which is what with --map COLUMN=CHANNEL; columns are"
                + $" {Listed(values)};"
                + $" channels are {string.Join(", ", Channels.All.ToArray().Select(Channels.NameOf))}");
        }

        var twice = values.Where(i => _targets[i] is not null)
            .GroupBy(i => _targets[i]).FirstOrDefault(group => group.Count() > 1);
        if (twice is not null)
        {
            throw Wrong($"two columns are {twice.Key}: {Listed(twice)}");
        }
    }

    private string Listed(IEnumerable<int> columns) =>
        string.Join(", ",
        columns.Select(i => $"{i + 1}{(_names[i] == $"{i + 1}" ? "" : $" '{Shown.Briefly(_names[i])}'")}"));

    private char DecimalMark()
    {
        if (wish.DecimalMark is { } stated)
        {
            return stated;
        }

        var cells = _rows.Skip(_first)
            .SelectMany(row => row.Where((_, i) => i < _targets.Length && _targets[i] is not null))
            .Where(IsNumber).ToArray();
        var hasComma = cells.Any(cell => cell.Contains(',', StringComparison.Ordinal));
        var hasPoint = cells.Any(cell => cell.Contains('.', StringComparison.Ordinal));
        return hasComma && hasPoint
            ? throw Wrong("some numbers have a comma and some a point; say with --decimal which is the decimal mark")
            : hasComma ? ',' : '.';
    }

    private ForeignForm WithTime(ForeignForm form)
    {
        var texts = _rows.Skip(_first)
            .Where(row => row.Length == _names.Count).Select(row => form.TimeText(row)).ToArray();
        if (ForeignNumber.TryParse(texts[0], form.DecimalMark, out var number)
            || ForeignNumber.TryParse(texts[0], '.', out number))
        {
            var isElapsed = wish.Mappings.Any(m => m.Target == ImportMapping.Elapsed)
                || _names[form.TimeColumn] == ImportMapping.Elapsed;
            return form with
            {
                TimeKind = isElapsed || number < UnixFromS ? ForeignTimeKind.Elapsed
                    : number < UnixFromS * 100 ? ForeignTimeKind.UnixSeconds : ForeignTimeKind.UnixMilliseconds,
            };
        }

        if (!ForeignTimeText.TryParse(texts[0], out var first))
        {
            throw Wrong($"'{Shown.Briefly(texts[0])}' is no time; say with --map COLUMN=time where times are");
        }

        if (first.Offset is null && wish.Zone is null)
        {
            throw Wrong($"its times ('{Shown.Briefly(texts[0])}') are local; say with --zone where, as Europe/Zurich"
                + $" or +02:00");
        }

        return form with
        {
            TimeKind = first.Offset is null ? ForeignTimeKind.Local : ForeignTimeKind.WithOffset,
            IsMonthFirst = IsMonthFirst(texts, first),
        };
    }

    private bool IsMonthFirst(string[] texts, ForeignMoment first)
    {
        if (first.IsYearFirst || first.IsPointed || wish.IsMonthFirst is not null)
        {
            return !first.IsYearFirst && !first.IsPointed && wish.IsMonthFirst!.Value;
        }

        var dates = texts.Select(text => ForeignTimeText.TryParse(text, out var date) ? date : first).ToArray();
        var isMonthFirst = dates.Any(date => date.Second > 12);
        return isMonthFirst || dates.Any(date => date.First > 12)
            ? isMonthFirst
            : throw Wrong(
                $"'{Shown.Briefly(texts[0])}' can be read in two ways; say with --date-order dmy or mdy which");
    }
}
