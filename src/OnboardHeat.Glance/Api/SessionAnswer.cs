namespace OnboardHeat.Glance.Api;

/// <summary>What this browser may do.</summary>
/// <param name="Paired">Whether it is a paired phone and may act.</param>
/// <param name="Van">The van's id.</param>
internal sealed record SessionAnswer(bool Paired, string Van);
