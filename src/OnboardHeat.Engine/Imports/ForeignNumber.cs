using System.Globalization;

namespace OnboardHeat.Engine.Imports;

/// <summary>Numbers as loggers write them, with a point or a comma, perhaps with a unit behind.</summary>
internal static class ForeignNumber
{
    private const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint
        | NumberStyles.AllowExponent;

    private static readonly string[] s_none =
        ["", "-", "--", "---", "nan", "null", "none", "n/a", "na", "err", "error", "open"];

    /// <summary>Whether the cell says that there was no reading.</summary>
    public static bool IsNone(string cell) => s_none.Contains(cell.Trim(), StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads a number with this decimal mark; degrees Celsius may stand behind it.</summary>
    public static bool TryParse(string cell, char mark, out double number)
    {
        var text = cell.Trim().TrimEnd('C', '°', 'º', ' ', '\u00A0');
        number = 0;
        var other = mark == ',' ? '.' : ',';
        return !text.Contains(other, StringComparison.Ordinal)
            && double.TryParse(text.Replace(mark, '.'), Style, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
    }
}
