using OnboardHeat.Engine;

namespace OnboardHeat.Messaging.Topics;

/// <summary>A word with a topic of its own; said when it changes.</summary>
/// <param name="Name">Last part of the topic.</param>
/// <param name="Of">Takes it from a turn.</param>
internal sealed record Word(string Name, Func<Turn, string> Of);
