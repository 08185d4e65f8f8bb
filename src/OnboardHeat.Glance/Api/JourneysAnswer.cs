using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>Journeys, in the order of run and start.</summary>
internal sealed record JourneysAnswer(IReadOnlyList<JourneyForm> Journeys);
