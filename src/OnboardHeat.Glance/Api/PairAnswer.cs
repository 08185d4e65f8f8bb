namespace OnboardHeat.Glance.Api;

/// <summary>The phone is known.</summary>
/// <param name="Phone">Its short number, as the audit log names it.</param>
/// <param name="Token">The token its page sends with every action.</param>
internal sealed record PairAnswer(string Phone, string Token);
