using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Adapters.Tests.Review;

/// <summary>Journeys to put on record.</summary>
internal static class SomeJourney
{
    public static Journey Night(int run, double fromS, double hours, double lossWPerK) => new()
    {
        Type = JourneyType.Standing,
        Run = run,
        FromS = fromS,
        ToS = fromS + (hours * 3600),
        StartCelsius = 62,
        EndCelsius = 52,
        PeakCelsius = 62,
        GainedKWh = -0.3,
        SurroundingsCelsius = 14,
        JudgedS = hours * 3600,
        StartExcessK = 48,
        LossWPerK = new Estimate(lossWPerK, 0.01, TimeSpan.Zero, 6000),
        EndedBy = JourneyEnd.Engine,
    };

    public static Journey Drive(int run, double fromS, double toS) => new()
    {
        Type = JourneyType.Heating,
        Run = run,
        FromS = fromS,
        ToS = toS,
        StartCelsius = 18.5,
        EndCelsius = 63.25,
        PeakCelsius = 63.5,
        GainedKWh = 1.302,
        BySource = [new SourceHeat(HeatSource.Coolant, 1.2, 55), new SourceHeat(HeatSource.Both, 0.102, 4)],
        ToFortyS = 1260,
        ToSixtyS = 3180,
        SurroundingsCelsius = 16,
        CoilWPerK = 46.2,
        OverRating = [new PartMinutes("flow-hose", 3.25, 0.875)],
    };

    public static void On(HandRecord record, Journey journey)
    {
        var kept = JourneyJson.EventOf(journey, TimeSpan.FromSeconds(journey.ToS + 70));
        record.Event(journey.Run, journey.ToS + 70, kept.Kind, kept.Name, kept.State, kept.Text);
    }
}
