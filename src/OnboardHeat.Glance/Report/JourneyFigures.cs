using System.Globalization;
using OnboardHeat.Core;
using OnboardHeat.Core.Journeys;

namespace OnboardHeat.Glance.Report;

/// <summary>The figures of a journey in words, as a report lists them.</summary>
internal static class JourneyFigures
{
    /// <summary>What kind of journey it is.</summary>
    public static string NameOf(JourneyType type) => type switch
    {
        JourneyType.Heating => "Heating run",
        JourneyType.Standing => "Standing",
        JourneyType.Draw => "Draw",
        _ => "Stop",
    };

    /// <summary>A length of time.</summary>
    public static string Length(double seconds) => seconds < 5400
        ? Text($"{Math.Max(1, Math.Round(seconds / 60)):0} min")
        : Text($"{seconds / 3600:0.0} h");

    /// <summary>Everything that is known of it, a sentence each.</summary>
    public static IEnumerable<string> Of(Journey journey, VanDescription van, bool isShared)
    {
        yield return Text(
            $"Water {journey.StartCelsius:0.0} to {journey.EndCelsius:0.0} °C, warmest {journey.PeakCelsius:0.0} °C");
        yield return Text($"{journey.GainedKWh:+0.00;-0.00} kWh at {journey.MeanWatts:0} W");
        foreach (var source in journey.BySource)
        {
            yield return Text($"By {SourceOf(source.Source)}: {source.GainedKWh:+0.00;-0.00} kWh ")
                + Text($"in {source.Minutes:0} min, {source.MeanWatts:0} W");
        }

        if (journey.ToFortyS is { } forty)
        {
            yield return $"40 °C after {Length(forty)}";
        }

        if (journey.ToSixtyS is { } sixty)
        {
            yield return $"60 °C after {Length(sixty)}";
        }

        if (journey.CoilWPerK is { } coil)
        {
            yield return Text($"Coil {coil:0} W/K");
        }

        if (journey.LossWPerK is { } loss)
        {
            yield return Text($"Loss {loss.Value:0.00} ± {loss.Deviation:0.00} W/K");
        }

        if (journey.SurroundingsCelsius is { } around)
        {
            yield return Text($"Surroundings {around:0.0} °C");
        }

        foreach (var part in journey.OverRating)
        {
            yield return Text($"{PartOf(part.Part, van, isShared)} above its rating for {part.Minutes:0.#} min, ")
                + Text($"by up to {part.MostK:0.0} K");
        }
    }

    private static string SourceOf(HeatSource source) => source switch
    {
        HeatSource.Coolant => "coolant",
        HeatSource.Element => "element",
        _ => "coolant and element together",
    };

    // What an owner calls a part are people's words; its id is a word of the configuration.
    private static string PartOf(string id, VanDescription van, bool isShared) =>
        isShared ? id : van.Circuit.Parts.FirstOrDefault(part => part.Id == id)?.Name ?? id;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
