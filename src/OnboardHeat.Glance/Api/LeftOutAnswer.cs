using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>A night that the answer does not rest on.</summary>
/// <param name="Night">The night.</param>
/// <param name="Side"><c>before</c> or <c>after</c>.</param>
/// <param name="Why">Why, in words.</param>
internal sealed record LeftOutAnswer(JourneyForm Night, string Side, string Why);
