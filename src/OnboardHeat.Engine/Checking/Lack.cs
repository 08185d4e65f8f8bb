namespace OnboardHeat.Engine.Checking;

/// <summary>A watcher that cannot judge with what is fitted.</summary>
/// <param name="Watcher">Name of its first alarm.</param>
/// <param name="Needs">
/// The places any one of which would do, or pairs of them; empty when probes alone will not do.
/// </param>
public sealed record Lack(string Watcher, IReadOnlyList<string> Needs);
