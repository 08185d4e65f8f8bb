namespace OnboardHeat.Engine.Recordings;

/// <summary>
/// ISO 8601 date and time with an offset, as recordings write it: <c>2026-05-03T09:12:41.5+02:00</c>. The framework's
/// parsers take local times and other forms too, and a recording is read once a row.
/// </summary>
internal static class IsoTime
{
    /// <summary>Reads the extended form; seconds and their fraction may be left out, the offset may not.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out DateTimeOffset time)
    {
        time = default;
        if (text.Length < 17 || text[4] != '-' || text[7] != '-'
            || text[10] is not ('T' or 't' or ' ') || text[13] != ':'
            || !TryDigits(text[..4], out var year) || !TryDigits(text[5..7], out var month)
            || !TryDigits(text[8..10], out var day)
            || !TryDigits(text[11..13], out var hour) || !TryDigits(text[14..16], out var minute))
        {
            return false;
        }

        var rest = text[16..];
        if (!TryTakeSeconds(ref rest, out var ticks) || !TryOffset(rest, out var offset)
            || year is < 1 or > 9998 || month is < 1 or > 12 || day < 1
            || day > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59)
        {
            return false;
        }

        var local = new DateTime(year, month, day, hour, minute, 0, DateTimeKind.Unspecified).AddTicks(ticks);
        if (year == 1 && local.Ticks < offset.Ticks)
        {
            return false;
        }

        time = new DateTimeOffset(local, offset).ToUniversalTime();
        return true;
    }

    private static bool TryTakeSeconds(ref ReadOnlySpan<char> rest, out long ticks)
    {
        ticks = 0;
        if (rest.IsEmpty || rest[0] != ':')
        {
            return true;
        }

        if (rest.Length < 3 || !TryDigits(rest[1..3], out var second) || second > 59)
        {
            return false;
        }

        ticks = second * TimeSpan.TicksPerSecond;
        rest = rest[3..];
        if (rest.IsEmpty || rest[0] != '.')
        {
            return true;
        }

        var scale = TimeSpan.TicksPerSecond;
        var i = 1;
        for (; i < rest.Length && char.IsAsciiDigit(rest[i]); i++)
        {
            scale /= 10;
            ticks += (rest[i] - '0') * scale;
        }

        rest = rest[i..];
        return i > 1;
    }

    private static bool TryOffset(ReadOnlySpan<char> text, out TimeSpan offset)
    {
        offset = default;
        if (text is "Z" or "z")
        {
            return true;
        }

        if (text.Length is not (3 or 5 or 6) || text[0] is not ('+' or '-') || !TryDigits(text[1..3], out var hours))
        {
            return false;
        }

        var minutes = 0;
        if (text.Length == 6 && (text[3] != ':' || !TryDigits(text[4..], out minutes)))
        {
            return false;
        }

        if (text.Length == 5 && !TryDigits(text[3..], out minutes))
        {
            return false;
        }

        offset = new TimeSpan(hours, minutes, 0) * (text[0] == '-' ? -1 : 1);
        return minutes < 60 && offset.Duration() <= TimeSpan.FromHours(14);
    }

    private static bool TryDigits(ReadOnlySpan<char> text, out int value)
    {
        value = 0;
        foreach (var c in text)
        {
            if (!char.IsAsciiDigit(c))
            {
                return false;
            }

            value = (value * 10) + (c - '0');
        }

        return true;
    }
}
