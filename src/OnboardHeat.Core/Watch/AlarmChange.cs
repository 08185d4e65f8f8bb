namespace OnboardHeat.Core.Watch;

/// <summary>
/// An alarm's condition came or went in this scan, after its delays, whatever latch, acknowledgement or shelving say.
/// </summary>
/// <param name="Definition">Which alarm.</param>
/// <param name="Subject">The part, channel or watcher; empty where there can be one only.</param>
/// <param name="IsRaised">Raised, or cleared.</param>
/// <param name="Because">One sentence with its figures.</param>
public sealed record AlarmChange(AlarmDefinition Definition, string Subject, bool IsRaised, string Because);
