namespace OnboardHeat.Glance.Api;

/// <summary>A phone asks to be made known.</summary>
/// <param name="Code">The code that <c>onboardheat pair</c> printed.</param>
/// <param name="Name">What its owner calls the phone; may be empty.</param>
internal sealed record PairRequest(string? Code, string? Name);
