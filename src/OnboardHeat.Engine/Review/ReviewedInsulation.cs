using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>Whether the insulation is better, with the dates of the nights.</summary>
/// <param name="Mark">The change mark.</param>
/// <param name="Answer">The answer.</param>
/// <param name="Before">Nights before that it rests on.</param>
/// <param name="After">Nights after that it rests on.</param>
/// <param name="LeftOut">Nights that were left out.</param>
public sealed record ReviewedInsulation(
    RecordedEvent Mark, InsulationAnswer Answer, IReadOnlyList<DatedJourney> Before, IReadOnlyList<DatedJourney> After,
    IReadOnlyList<(DatedJourney Night, bool IsAfter, NightReason Why)> LeftOut);
