using System.Globalization;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// Reads a logger's file in the form that was found, row by row. What cannot be taken names its line and column.
/// </summary>
internal sealed class ForeignReader(ForeignForm form, ImportWish wish, ImportedFile seen)
{
    private static readonly string[] s_on = ["1", "on", "true", "yes"];
    private static readonly string[] s_off = ["0", "off", "false", "no"];

    private DateTimeOffset _before = DateTimeOffset.MinValue;

    /// <summary>Every row as a moment and what it adds to a scan.</summary>
    public IEnumerable<ForeignRow> Read(Stream stream)
    {
        foreach (var (line, cells) in ForeignRows.Read(form.File, stream, form.Separator).Skip(form.RowsBefore))
        {
            if (cells.Length != form.Names.Count)
            {
                throw new RecordingException(form.File, line, "",
                    $"{cells.Length} cells where {form.Names.Count} are expected");
            }

            var moment = MomentOf(line, cells);
            if (moment == _before)
            {
                seen.Repeated++;
                continue;
            }

            if (moment < _before)
            {
                throw Wrong(line, form.TimeColumn, form.TimeText(cells), "lies before the row before it");
            }

            _before = moment;
            seen.Add(form.TimeText(cells), moment);
            yield return new ForeignRow(line, moment, ReadingsOf(line, cells));
        }
    }

    private RecordingException Wrong(int line, int column, string cell, string what) =>
        new(form.File, line, form.Names[column], $"'{Shown.Briefly(cell)}' {what}");

    private DateTimeOffset MomentOf(int line, string[] cells)
    {
        var text = form.TimeText(cells);
        if (form.TimeKind is not (ForeignTimeKind.Local or ForeignTimeKind.WithOffset))
        {
            return ForeignNumber.TryParse(text, form.DecimalMark, out var number)
                || ForeignNumber.TryParse(text, '.', out number)
                ? DateTimeOffset.UnixEpoch.AddMilliseconds(
                    Math.Round(form.TimeKind == ForeignTimeKind.UnixMilliseconds ? number : number * 1000))
                : throw Wrong(line, form.TimeColumn, text, "is no number of seconds");
        }

        if (!ForeignTimeText.TryParse(text, out var parts) || !TryDate(parts, out var local))
        {
            throw Wrong(line, form.TimeColumn, text, "is no time as the rows before it have");
        }

        if (parts.Offset is { } offset)
        {
            return new DateTimeOffset(local, offset).ToUniversalTime();
        }

        var zone = wish.Zone ?? throw Wrong(line, form.TimeColumn, text, "has no offset; say with --zone where it was");
        var moment = zone.MomentOf(local, _before, out var isDoubled);
        seen.Doubled += isDoubled ? 1 : 0;
        return moment?.ToUniversalTime()
            ?? throw Wrong(line, form.TimeColumn, text, $"is no time in {zone.Name}: clocks leap over it in spring");
    }

    private bool TryDate(in ForeignMoment parts, out DateTime local)
    {
        var (year, month, day) = parts.IsYearFirst ? (parts.First, parts.Second, parts.Third)
            : form.IsMonthFirst ? (parts.Third, parts.First, parts.Second) : (parts.Third, parts.Second, parts.First);
        year += year < 100 ? 2000 : 0;
        var isDate = year is >= 1970 and < 3000 && month is >= 1 and <= 12 && day >= 1
            && day <= DateTime.DaysInMonth(year, month);
        local = isDate ? new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Unspecified) + parts.OfDay : default;
        return isDate;
    }

    private List<ForeignReading> ReadingsOf(int line, string[] cells)
    {
        var readings = new List<ForeignReading>();
        for (var i = 0; i < cells.Length; i++)
        {
            if (form.Targets[i] is not { } target)
            {
                continue;
            }

            double? value = ForeignNumber.IsNone(cells[i]) ? null : ValueOf(line, i, cells[i], target);
            seen.Add(i, value);
            if (value is { } known)
            {
                readings.Add(new ForeignReading(target, known));
            }
        }

        return readings;
    }

    private double ValueOf(int line, int column, string cell, string target)
    {
        if (Signals.TryParse(target, out _))
        {
            return s_on.Contains(cell, StringComparer.OrdinalIgnoreCase) ? 1
                : s_off.Contains(cell, StringComparer.OrdinalIgnoreCase) ? 0
                : throw Wrong(line, column, cell,
                    "is no signal; those are 0 or 1, on or off, true or false, yes or no");
        }

        return ForeignNumber.TryParse(cell, form.DecimalMark, out var value)
            ? value
            : throw Wrong(line, column, cell, string.Create(
                CultureInfo.InvariantCulture,
                $"is no number with a decimal {(form.DecimalMark == ',' ? "comma" : "point")}"));
    }
}
