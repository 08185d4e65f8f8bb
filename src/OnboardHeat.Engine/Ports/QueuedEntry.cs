namespace OnboardHeat.Engine.Ports;

/// <summary>One entry of the record for a receiver: an event, or the figures of a moment.</summary>
/// <param name="Number">
/// Running number over all runs; rises by one from entry to entry, and jumps ahead only after damage.
/// </param>
/// <param name="Event">The event; null for figures.</param>
/// <param name="Figures">The figures; null for an event.</param>
public sealed record QueuedEntry(long Number, RecordedEvent? Event, RecordedFigures? Figures);
