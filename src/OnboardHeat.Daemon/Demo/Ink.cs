namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// Colours of the terminal (ECMA-48 sequences), or none where the person asked for none (NO_COLOR, no-color.org).
/// </summary>
internal sealed class Ink(bool isColoured)
{
    /// <summary>
    /// From cold to hot in the 256-colour cube: blue, grey-green, sand, orange, red; each step has its figure beside
    /// it.
    /// </summary>
    private static readonly int[] s_warmth = [25, 31, 66, 101, 137, 173, 167, 160];

    public string Bold(string text) => Dress("1", text);

    public string Quiet(string text) => Dress("2", text);

    /// <summary>Words of an alarm: red ground for critical, amber for a warning, plain bold for advice.</summary>
    public string Alarm(Core.Watch.AlarmPriority priority, string text) => Dress(
        priority switch
        {
            Core.Watch.AlarmPriority.Critical => "1;38;5;231;48;5;124",
            Core.Watch.AlarmPriority.Warning => "1;38;5;214",
            _ => "1",
        },
        text);

    /// <summary>Text in the colour of a temperature, 10 °C and below to 80 °C and above.</summary>
    public string Warm(double celsius, string text)
    {
        var step = (int)Math.Clamp((celsius - 10) / 70 * s_warmth.Length, 0, s_warmth.Length - 1);
        return Dress(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"38;5;{s_warmth[step]}"), text);
    }

    private string Dress(string how, string text) => isColoured && text.Length > 0 ? $"\x1b[{how}m{text}\x1b[0m" : text;
}
