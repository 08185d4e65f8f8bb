using System.Globalization;
using OnboardHeat.Engine.Recordings;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>Journeys as rows of a CSV table; an unknown figure is an empty cell.</summary>
internal static class JourneyTable
{
    /// <summary>Its head, with the units in the names.</summary>
    public const string Head =
        "run,type,from_s,to_s,from_time,to_time,dating,open,start_celsius,end_celsius,peak_celsius,gained_kwh,"
        + "mean_watts,coolant_kwh,element_kwh,both_kwh,to_40_s,to_60_s,surroundings_celsius,coil_w_per_k,loss_w_per_k,"
        + "loss_deviation_w_per_k,start_excess_k,valves_open_share,ended_by,over_rating\n";

    /// <summary>One journey.</summary>
    public static string Row(JourneyForm form) => string.Create(
        CultureInfo.InvariantCulture,
        $"{form.Run},{form.Type},{form.From},{form.To},{form.FromTime},{form.ToTime},"
        + $"{form.Dating},{(form.Open ? 1 : 0)},")
        + string.Create(
            CultureInfo.InvariantCulture,
            $"{form.StartCelsius},{form.EndCelsius},{form.PeakCelsius},{form.GainedKWh},{form.MeanWatts},")
        + string.Create(
            CultureInfo.InvariantCulture,
            $"{Of(form, "coolant")},{Of(form, "element")},{Of(form, "both")},"
            + $"{form.ToFortyS},{form.ToSixtyS},{form.SurroundingsCelsius},")
        + string.Create(
            CultureInfo.InvariantCulture,
            $"{form.CoilWPerK},{form.LossWPerK},{form.LossDeviationWPerK},{form.StartExcessK},{form.ValvesOpenShare},")
        + $"{form.EndedBy},{Parts(form)}\n";

    private static double? Of(JourneyForm form, string source) =>
        form.Sources?.FirstOrDefault(one => one.Source == source)?.GainedKWh;

    private static string Parts(JourneyForm form) => CellGuard.Cell(string.Join(
        ' ', (form.OverRating ?? []).Select(part =>
        string.Create(CultureInfo.InvariantCulture, $"{part.Part}:{part.Minutes}min"))));
}
