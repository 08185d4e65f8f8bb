using System.Globalization;

namespace OnboardHeat.Engine.Imports;

/// <summary>What was understood of one file, for the person who must see whether it is right.</summary>
internal sealed class ImportedFile
{
    private readonly ForeignForm _form;
    private readonly ImportedColumn?[] _columns;
    private readonly SortedDictionary<double, long> _periods = [];
    private (string Text, DateTimeOffset Moment)? _first;
    private DateTimeOffset _last;
    private TimeSpan _longest;
    private long _rows;

    public ImportedFile(ForeignForm form)
    {
        _form = form;
        _columns = [.. form.Targets.Select((t, i) => t is null ? null : new ImportedColumn(form.Names[i], t))];
    }

    /// <summary>Rows in the hour that clocks show twice.</summary>
    public long Doubled { get; set; }

    /// <summary>Rows left out because the row before has the same time.</summary>
    public long Repeated { get; set; }

    public void Add(string text, DateTimeOffset moment)
    {
        if (_first is null)
        {
            _first = (text, moment);
        }
        else
        {
            var step = moment - _last;
            _longest = step > _longest ? step : _longest;
            var periodS = Math.Round(step.TotalSeconds, 1);
            _periods[periodS] = _periods.GetValueOrDefault(periodS) + 1;
        }

        _last = moment;
        _rows++;
    }

    public void Add(int column, double? value) => _columns[column]?.Add(value);

    /// <summary>The lines of a dry run.</summary>
    public IEnumerable<string> Lines(ImportWish wish)
    {
        yield return $"{_form.File}: columns parted by {NameOf(_form.Separator)}, decimal"
            + $" {(_form.DecimalMark == ',' ? "comma" : "point")}, "
            + (_form.HasHeader ? $"header in row {_form.RowsBefore}" : "no header");
        if (_first is { } first)
        {
            yield return $"  times are {TimesAre(wish)}: '{first.Text}' is {Shown(first.Moment)}";
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"  {_rows} rows to {Shown(_last)}, mostly {Usual()} s apart, the longest gap"
                    + $" {_longest.TotalSeconds} s");
        }

        foreach (var column in _columns)
        {
            if (column is not null)
            {
                yield return $"  {column}";
            }
        }

        var left = Enumerable.Range(0, _columns.Length)
            .Where(i => _columns[i] is null && i != _form.TimeColumn && i != _form.OfDayColumn)
                .Select(i => $"'{_form.Names[i]}'").ToArray();
        if (left.Length > 0)
        {
            yield return $"  left out: {string.Join(", ", left)}";
        }

        if (Doubled > 0)
        {
            yield return $"  {Doubled} rows lie in the hour that clocks show twice; they were put in the order of the"
                + $" rows";
        }

        if (Repeated > 0)
        {
            yield return $"  {Repeated} rows have the time of the row before and are left out: its times are too"
                + $" coarse";
        }
    }

    private static string NameOf(char separator) => separator switch
    {
        ',' => "commas",
        ';' => "semicolons",
        '\t' => "tabs",
        _ => $"'{separator}'",
    };

    private string TimesAre(ImportWish wish) => _form.TimeKind switch
    {
        ForeignTimeKind.Local => $"local times of {wish.Zone?.Name}{(_form.IsMonthFirst ? ", month first" : "")}",
        ForeignTimeKind.WithOffset => "times with an offset",
        ForeignTimeKind.UnixSeconds => "seconds since 1970",
        ForeignTimeKind.UnixMilliseconds => "milliseconds since 1970",
        _ => "seconds since the recording began",
    };

    private string Shown(DateTimeOffset moment) => _form.TimeKind == ForeignTimeKind.Elapsed
        ? string.Create(CultureInfo.InvariantCulture, $"{(moment - DateTimeOffset.UnixEpoch).TotalSeconds} s")
        : moment.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFF'Z'", CultureInfo.InvariantCulture);

    private double Usual() => _periods.Count == 0 ? 0 : _periods.MaxBy(period => period.Value).Key;
}
