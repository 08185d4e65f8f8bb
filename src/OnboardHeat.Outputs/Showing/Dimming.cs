using OnboardHeat.Core;
using OnboardHeat.Engine.Options;
using OnboardHeat.Outputs.Sounding;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// Decides how bright the display is. An alarm that sounds lights it whatever the hour and the option; a clock that is
/// not known to be right says nothing of the night, and then an engine at rest does.
/// </summary>
internal sealed class Dimming(OutputOptions options, TimeZoneInfo zone)
{
    /// <summary>Local hours of the night: when two sleepers lie down and get up (common practice, no source).</summary>
    private const int NightFromHour = 21, NightUntilHour = 7;

    private readonly SoundingRules _rules = new(options);

    public Brightness Of(Picture picture)
    {
        if (_rules.Sounds(picture) is not null)
        {
            return Brightness.Full;
        }

        var isEngineOff = picture.Circuit.IsEngineRunning != true;
        if (isEngineOff && !options.DisplayParked)
        {
            return Brightness.Off;
        }

        return IsNight(picture) ?? isEngineOff ? Brightness.Dimmed : Brightness.Full;
    }

    private bool? IsNight(Picture picture) => picture is { IsUtcTrusted: true, Utc: { } utc }
        ? TimeZoneInfo.ConvertTime(utc, zone).Hour is >= NightFromHour or < NightUntilHour
        : null;
}
