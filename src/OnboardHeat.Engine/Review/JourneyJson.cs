using System.Text.Json;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Engine.Ports;

namespace OnboardHeat.Engine.Review;

/// <summary>Journeys to the text that the record keeps, and back.</summary>
public static class JourneyJson
{
    // Finer than anything that is known of a journey.
    private const int Decimals = 3, HeatDecimals = 5;

    /// <summary>The event by which the record keeps a journey that a turn has ended.</summary>
    public static RecordedEvent EventOf(Journey journey, TimeSpan elapsed)
    {
        ArgumentNullException.ThrowIfNull(journey);
        var text = JsonSerializer.Serialize(FormOf(journey), ReviewJsonContext.Default.JourneyForm);
        return new RecordedEvent(journey.Run, elapsed, null, RecordedEvent.JourneyKind, PublicNames.Of(journey.Type),
            "", text);
    }

    /// <summary>
    /// The journey of a recorded event; null when it is none, or one that this version does not know.
    /// </summary>
    public static Journey? Read(RecordedEvent recorded)
    {
        ArgumentNullException.ThrowIfNull(recorded);
        if (recorded.Kind != RecordedEvent.JourneyKind)
        {
            return null;
        }

        try
        {
            // The record may have numbered the run anew; what it says of the run counts.
            return JsonSerializer.Deserialize(recorded.Text, ReviewJsonContext.Default.JourneyForm) is { } form
                ? JourneyOf(form, recorded.Run)
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>A journey in its public form, without dates.</summary>
    public static JourneyForm FormOf(Journey journey)
    {
        ArgumentNullException.ThrowIfNull(journey);
        var isStanding = journey.Type == JourneyType.Standing;
        return new JourneyForm
        {
            Type = PublicNames.Of(journey.Type),
            Run = journey.Run,
            From = Rounded(journey.FromS),
            To = Rounded(journey.ToS),
            StartCelsius = Rounded(journey.StartCelsius),
            EndCelsius = Rounded(journey.EndCelsius),
            PeakCelsius = Rounded(journey.PeakCelsius),
            GainedKWh = Math.Round(journey.GainedKWh, HeatDecimals),
            MeanWatts = Rounded(journey.MeanWatts),
            Sources = journey.BySource.Count == 0 ? null : [.. journey.BySource.Select(FormOf)],
            ToFortyS = Rounded(journey.ToFortyS),
            ToSixtyS = Rounded(journey.ToSixtyS),
            SurroundingsCelsius = Rounded(journey.SurroundingsCelsius),
            CoilWPerK = Rounded(journey.CoilWPerK),
            LossWPerK = journey.LossWPerK is { } loss ? Math.Round(loss.Value, HeatDecimals) : null,
            LossDeviationWPerK = journey.LossWPerK is { } sure ? Math.Round(sure.Deviation, HeatDecimals) : null,
            LossCount = journey.LossWPerK?.Count,
            JudgedS = isStanding ? Rounded(journey.JudgedS) : null,
            StartExcessK = Rounded(journey.StartExcessK),
            StartLayersK = isStanding ? Rounded(journey.StartLayersK) : null,
            ValvesOpenShare = Rounded(journey.ValvesOpenShare),
            CirculatedShare = isStanding ? Rounded(journey.CirculatedShare) : null,
            EndedBy = NameOf(journey.EndedBy),
            OverRating = journey.OverRating.Count == 0 ? null : [.. journey.OverRating.Select(FormOf)],
        };
    }

    private static Journey? JourneyOf(JourneyForm form, int run) =>
        !TypeOf(form.Type, out var type) ? null : new Journey
    {
        Type = type,
        Run = run,
        FromS = form.From,
        ToS = form.To,
        StartCelsius = form.StartCelsius,
        EndCelsius = form.EndCelsius,
        PeakCelsius = form.PeakCelsius,
        GainedKWh = form.GainedKWh,
        BySource = [.. (form.Sources ?? []).Select(s => new SourceHeat(SourceOf(s.Source), s.GainedKWh, s.Minutes))],
        ToFortyS = form.ToFortyS,
        ToSixtyS = form.ToSixtyS,
        SurroundingsCelsius = form.SurroundingsCelsius,
        CoilWPerK = form.CoilWPerK,
        LossWPerK = form is { LossWPerK: { } loss, LossDeviationWPerK: { } deviation }
            ? new Estimate(loss, deviation, TimeSpan.Zero, form.LossCount ?? 0)
            : null,
        JudgedS = form.JudgedS ?? 0,
        StartExcessK = form.StartExcessK,
        StartLayersK = form.StartLayersK ?? 0,
        ValvesOpenShare = form.ValvesOpenShare,
        CirculatedShare = form.CirculatedShare ?? 0,
        EndedBy = EndOf(form.EndedBy),
        OverRating = [.. (form.OverRating ?? []).Select(part => new PartMinutes(part.Part, part.Minutes, part.MostK))],
    };

    private static SourceForm FormOf(SourceHeat heat) => new(
        NameOf(heat.Source), Math.Round(heat.GainedKWh, HeatDecimals), Rounded(heat.Minutes), Rounded(heat.MeanWatts));

    private static PartForm FormOf(PartMinutes part) => new(part.Part, Rounded(part.Minutes), Rounded(part.MostK));

    private static string NameOf(HeatSource source) => source switch
    {
        HeatSource.Element => "element",
        HeatSource.Both => "both",
        _ => "coolant",
    };

    private static HeatSource SourceOf(string name) => name switch
    {
        "element" => HeatSource.Element,
        "both" => HeatSource.Both,
        _ => HeatSource.Coolant,
    };

    private static string NameOf(JourneyEnd end) => end switch
    {
        JourneyEnd.Engine => "engine",
        JourneyEnd.Element => "element",
        JourneyEnd.Draw => "draw",
        JourneyEnd.RecordEnd => "record-end",
        _ => "by-itself",
    };

    private static JourneyEnd EndOf(string name) => name switch
    {
        "engine" => JourneyEnd.Engine,
        "element" => JourneyEnd.Element,
        "draw" => JourneyEnd.Draw,
        "record-end" => JourneyEnd.RecordEnd,
        _ => JourneyEnd.ByItself,
    };

    private static bool TypeOf(string name, out JourneyType type)
    {
        for (type = JourneyType.Heating; type <= JourneyType.Stop; type++)
        {
            if (PublicNames.Of(type) == name)
            {
                return true;
            }
        }

        return false;
    }

    private static double Rounded(double value) => Math.Round(value, Decimals);

    private static double? Rounded(double? value) => value is { } known ? Rounded(known) : null;
}
