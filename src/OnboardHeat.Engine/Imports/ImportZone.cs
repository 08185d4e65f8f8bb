using System.Globalization;

namespace OnboardHeat.Engine.Imports;

/// <summary>
/// The zone of a logger's clock: an offset that never changes, or a place whose clocks change in spring and autumn.
/// </summary>
public sealed class ImportZone
{
    private readonly TimeZoneInfo _zone;

    private ImportZone(TimeZoneInfo zone) => _zone = zone;

    /// <summary>Its name as it was stated.</summary>
    public string Name => _zone.Id;

    /// <summary>
    /// Reads <c>+02:00</c>, <c>UTC</c> or a name of the IANA time zone database such as <c>Europe/Zurich</c>.
    /// </summary>
    public static bool TryParse(string text, out ImportZone? zone)
    {
        zone = null;
        if (TryOffset(text, out var offset))
        {
            zone = new ImportZone(TimeZoneInfo.CreateCustomTimeZone(text, offset, text, text));
        }
        else if (TimeZoneInfo.TryFindSystemTimeZoneById(text, out var found))
        {
            zone = new ImportZone(found);
        }

        return zone is not null;
    }

    /// <summary>
    /// The moment of a local time. In the hour that clocks pass twice in autumn the first passage is meant unless that
    /// lies before the row before; in the one they leap over in spring there is none: null.
    /// </summary>
    /// <param name="local">What the logger's clock showed.</param>
    /// <param name="notBefore">The moment of the row before.</param>
    /// <param name="isDoubled">Whether clocks show this time twice.</param>
    public DateTimeOffset? MomentOf(DateTime local, DateTimeOffset notBefore, out bool isDoubled)
    {
        isDoubled = _zone.IsAmbiguousTime(local);
        if (_zone.IsInvalidTime(local))
        {
            return null;
        }

        if (!isDoubled)
        {
            return new DateTimeOffset(local, _zone.GetUtcOffset(local));
        }

        var offsets = _zone.GetAmbiguousTimeOffsets(local);
        var first = new DateTimeOffset(local, offsets.Max());
        return first >= notBefore ? first : new DateTimeOffset(local, offsets.Min());
    }

    internal static bool TryOffset(ReadOnlySpan<char> text, out TimeSpan offset)
    {
        offset = default;
        if (text.Length is not (3 or 5 or 6) || text[0] is not ('+' or '-')
            || !int.TryParse(text[1..3], NumberStyles.None, CultureInfo.InvariantCulture, out var hours))
        {
            return false;
        }

        var minutes = 0;
        var isWhole = text.Length == 3
            || (int.TryParse(text[^2..], NumberStyles.None, CultureInfo.InvariantCulture, out minutes)
                && (text.Length == 5 || text[3] == ':'));
        offset = new TimeSpan(hours, minutes, 0) * (text[0] == '-' ? -1 : 1);
        return isWhole && hours <= 14 && minutes <= 59;
    }
}
