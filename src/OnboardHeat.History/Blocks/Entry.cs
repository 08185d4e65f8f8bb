using OnboardHeat.Engine.Ports;

namespace OnboardHeat.History.Blocks;

/// <summary>
/// One line of a block of entries: an event or the figures of a moment (dates are worked out when it is read).
/// </summary>
/// <param name="Elapsed">Time since the run began.</param>
/// <param name="Event">The event; null for figures.</param>
/// <param name="Figures">The figures; null for an event.</param>
internal sealed record Entry(TimeSpan Elapsed, RecordedEvent? Event, IReadOnlyList<double?>? Figures);
