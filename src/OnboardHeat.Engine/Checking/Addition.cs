namespace OnboardHeat.Engine.Checking;

/// <summary>What one more probe or contact would add.</summary>
/// <param name="Place">Name of the channel or signal.</param>
/// <param name="Watchers">The watchers that could judge with it and cannot now.</param>
public sealed record Addition(string Place, IReadOnlyList<string> Watchers);
