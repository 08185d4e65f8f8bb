using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Review;

/// <summary>
/// A journey in its public form: what the record keeps of it, and what pages and files show. Units stand in the keys.
/// </summary>
public sealed record JourneyForm
{
    /// <summary><c>heating</c>, <c>standing</c>, <c>draw</c> or <c>stop</c>.</summary>
    public required string Type { get; init; }

    /// <summary>Run that it lies in.</summary>
    public required int Run { get; init; }

    /// <summary>Elapsed seconds of the run at its start.</summary>
    public required double From { get; init; }

    /// <summary>Elapsed seconds at its end.</summary>
    public required double To { get; init; }

    /// <summary>
    /// Date of its start, ISO 8601 in UTC; null in the record itself, and where the run has no date at all.
    /// </summary>
    public string? FromTime { get; init; }

    /// <summary>Date of its end; null likewise.</summary>
    public string? ToTime { get; init; }

    /// <summary>
    /// How far the dates can be believed: <c>trusted</c>, <c>dated-afterwards</c> or <c>undated</c>; null in the record
    /// itself.
    /// </summary>
    public string? Dating { get; init; }

    /// <summary>Whether it was still going on at the end of what is on record.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Open { get; init; }

    /// <summary>Water at the start, degrees Celsius.</summary>
    public required double StartCelsius { get; init; }

    /// <summary>Water at the end, degrees Celsius.</summary>
    public required double EndCelsius { get; init; }

    /// <summary>Warmest mean of the water, degrees Celsius.</summary>
    public required double PeakCelsius { get; init; }

    /// <summary>Stored heat gained, kilowatt-hours; negative when lost or drawn.</summary>
    public required double GainedKWh { get; init; }

    /// <summary>That spread over the journey, watts.</summary>
    public required double MeanWatts { get; init; }

    /// <summary>By source, where <c>element_on</c> is fitted; else null.</summary>
    public IReadOnlyList<SourceForm>? Sources { get; init; }

    /// <summary>Seconds until the water reached 40 °C.</summary>
    public double? ToFortyS { get; init; }

    /// <summary>Seconds until the water reached 60 °C.</summary>
    public double? ToSixtyS { get; init; }

    /// <summary>Mean of the surroundings, degrees Celsius.</summary>
    public double? SurroundingsCelsius { get; init; }

    /// <summary>Coil conductance, watts per kelvin.</summary>
    public double? CoilWPerK { get; init; }

    /// <summary>Loss coefficient, watts per kelvin.</summary>
    public double? LossWPerK { get; init; }

    /// <summary>One standard deviation of it.</summary>
    public double? LossDeviationWPerK { get; init; }

    /// <summary>Readings that it rests on.</summary>
    public int? LossCount { get; init; }

    /// <summary>Seconds of the stretch by which the lagging is judged.</summary>
    public double? JudgedS { get; init; }

    /// <summary>Tank above its surroundings at the start, kelvin.</summary>
    public double? StartExcessK { get; init; }

    /// <summary>Top above bottom at the start, kelvin.</summary>
    public double? StartLayersK { get; init; }

    /// <summary>Share of the time with the valves open.</summary>
    public double? ValvesOpenShare { get; init; }

    /// <summary>Share of the time in which coolant turned by its own buoyancy.</summary>
    public double? CirculatedShare { get; init; }

    /// <summary><c>by-itself</c>, <c>engine</c>, <c>element</c>, <c>draw</c> or <c>record-end</c>.</summary>
    public required string EndedBy { get; init; }

    /// <summary>Parts above their rating; null when none was.</summary>
    public IReadOnlyList<PartForm>? OverRating { get; init; }
}
