using OnboardHeat.Engine;

namespace OnboardHeat.Messaging.Topics;

/// <summary>A number with a topic of its own.</summary>
/// <param name="Name">Last part of the topic, unit at its end.</param>
/// <param name="Deadband">Smallest change that is said before its period is over, in the figure's unit.</param>
/// <param name="Decimals">Decimals that are written.</param>
/// <param name="Of">Takes it from a turn; null: unknown.</param>
internal sealed record Figure(string Name, double Deadband, int Decimals, Func<Turn, double?> Of);
