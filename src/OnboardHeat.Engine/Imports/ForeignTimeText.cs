using System.Globalization;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// Takes times of loggers apart: <c>3.5.2026 09:12</c>, <c>05/03/2026 9:12:41 AM</c>,
/// <c>2026-05-03T09:12:41,5+02:00</c>.
/// </summary>
internal static class ForeignTimeText
{
    /// <summary>Reads a date and a time of day with what may follow; false where the text is none.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out ForeignMoment moment)
    {
        moment = default;
        var rest = text.Trim();
        if (!TryNumber(ref rest, out var first, out var digits) || rest.IsEmpty || rest[0] is not ('.' or '/' or '-'))
        {
            return false;
        }

        var mark = rest[0];
        if (!TryAfter(ref rest, mark, out var second) || !TryAfter(ref rest, mark, out var third))
        {
            return false;
        }

        rest = rest.TrimStart(" T,;");
        if (!TryOfDay(ref rest, out var ofDay) || !TryOffset(rest.Trim(), out var offset))
        {
            return false;
        }

        moment = new ForeignMoment(first, second, third, digits == 4, mark == '.', ofDay, offset);
        return true;
    }

    private static bool TryOfDay(ref ReadOnlySpan<char> rest, out TimeSpan ofDay)
    {
        ofDay = default;
        if (rest.IsEmpty)
        {
            return true;
        }

        if (!TryNumber(ref rest, out var hour, out _) || !TryAfter(ref rest, ':', out var minute))
        {
            return false;
        }

        var second = 0.0;
        if (!rest.IsEmpty && rest[0] == ':' && !TrySecond(ref rest, out second))
        {
            return false;
        }

        if (!TryHalf(ref rest, ref hour))
        {
            return false;
        }

        ofDay = new TimeSpan(hour, minute, 0) + TimeSpan.FromMilliseconds(Math.Round(second * 1000));
        return hour <= 23 && minute <= 59 && second < 60;
    }

    private static bool TrySecond(ref ReadOnlySpan<char> rest, out double second)
    {
        rest = rest[1..];
        var end = 0;
        while (end < rest.Length && (char.IsAsciiDigit(rest[end]) || rest[end] is '.' or ','))
        {
            end++;
        }

        var isSecond = double.TryParse(
            rest[..end].ToString().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out second);
        rest = rest[end..];
        return isSecond;
    }

    /// <summary>Hours from 1 to 12 with the half of the day behind them.</summary>
    private static bool TryHalf(ref ReadOnlySpan<char> rest, ref int hour)
    {
        var after = rest.TrimStart();
        var isAfternoon = after.StartsWith("pm", StringComparison.OrdinalIgnoreCase);
        if (!isAfternoon && !after.StartsWith("am", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        rest = after[2..];
        if (hour is < 1 or > 12)
        {
            return false;
        }

        hour = (hour % 12) + (isAfternoon ? 12 : 0);
        return true;
    }

    private static bool TryOffset(ReadOnlySpan<char> rest, out TimeSpan? offset)
    {
        offset = null;
        if (rest.IsEmpty)
        {
            return true;
        }

        if (rest is "Z" or "z" || rest.Equals("utc", StringComparison.OrdinalIgnoreCase))
        {
            offset = TimeSpan.Zero;
            return true;
        }

        var isOffset = ImportZone.TryOffset(rest, out var found);
        offset = found;
        return isOffset;
    }

    private static bool TryAfter(ref ReadOnlySpan<char> rest, char mark, out int number)
    {
        number = 0;
        if (rest.IsEmpty || rest[0] != mark)
        {
            return false;
        }

        rest = rest[1..];
        return TryNumber(ref rest, out number, out _);
    }

    private static bool TryNumber(ref ReadOnlySpan<char> rest, out int number, out int digits)
    {
        digits = 0;
        while (digits < rest.Length && digits < 5 && char.IsAsciiDigit(rest[digits]))
        {
            digits++;
        }

        var isNumber = int.TryParse(rest[..digits], NumberStyles.None, CultureInfo.InvariantCulture, out number);
        rest = rest[digits..];
        return isNumber && digits is 1 or 2 or 4;
    }
}
