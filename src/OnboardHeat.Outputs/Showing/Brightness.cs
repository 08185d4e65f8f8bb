namespace OnboardHeat.Outputs.Showing;

/// <summary>How bright the display is.</summary>
internal enum Brightness
{
    /// <summary>Dark.</summary>
    Off,

    /// <summary>By night: to be read from the bunk, and not to light it.</summary>
    Dimmed,

    /// <summary>By day, and whenever an alarm sounds.</summary>
    Full,
}
