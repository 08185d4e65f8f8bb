namespace OnboardHeat.Outputs.Sounding;

/// <summary>
/// Something that lamp and buzzer do for a moment in place of what the alarms say: a test, or the answer to an order.
/// </summary>
/// <param name="Tone">What the buzzer does.</param>
/// <param name="Light">What the lamp does.</param>
/// <param name="Since">When it began.</param>
/// <param name="Until">When the alarms have them again.</param>
internal readonly record struct Interlude(Pattern Tone, Pattern Light, TimeSpan Since, TimeSpan Until);
