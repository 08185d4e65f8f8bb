using OnboardHeat.Core.Journeys;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>A journey with its dates, as far as it has any.</summary>
/// <param name="Journey">The journey.</param>
/// <param name="From">Date of its start; null where the run has no date at all.</param>
/// <param name="To">Date of its end; null likewise.</param>
/// <param name="Dating">How far these dates can be believed.</param>
/// <param name="IsOpen">Whether it was still going on at the end of what is on record.</param>
public sealed record DatedJourney(Journey Journey, DateTimeOffset? From, DateTimeOffset? To, RunDating Dating,
    bool IsOpen)
{
    /// <summary>Its public form.</summary>
    public JourneyForm Form => JourneyJson.FormOf(Journey) with
    {
        FromTime = PictureJson.TimeOf(From),
        ToTime = PictureJson.TimeOf(To),
        Dating = PublicNames.Of(Dating),
        Open = IsOpen,
    };
}
