using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// One journey that has ended, found by itself in the scans. Temperatures are means of the water unless said.
/// </summary>
public sealed record Journey
{
    /// <summary>What it was.</summary>
    public required JourneyType Type { get; init; }

    /// <summary>Number of the run it lies in.</summary>
    public required int Run { get; init; }

    /// <summary>Elapsed seconds of the run at which it began.</summary>
    public required double FromS { get; init; }

    /// <summary>Elapsed seconds at which it ended; after <see cref="FromS"/>.</summary>
    public required double ToS { get; init; }

    /// <summary>Water at the start, degrees Celsius.</summary>
    public required double StartCelsius { get; init; }

    /// <summary>Water at the end, degrees Celsius.</summary>
    public required double EndCelsius { get; init; }

    /// <summary>The warmest mean in between, degrees Celsius.</summary>
    public required double PeakCelsius { get; init; }

    /// <summary>
    /// Stored heat at the end less that at the start, kilowatt-hours; negative when heat was lost or drawn.
    /// </summary>
    public required double GainedKWh { get; init; }

    /// <summary>That heat spread over the journey, watts; losses not added back.</summary>
    public double MeanWatts =>
        (Joules.OfKilowattHours(GainedKWh) / TimeSpan.FromSeconds(Math.Max(1, ToS - FromS))).Value;

    /// <summary>Of a heating run, what each source gave; empty where <c>element_on</c> is not fitted.</summary>
    public IReadOnlyList<SourceHeat> BySource { get; init; } = [];

    /// <summary>Seconds from the start until the mean reached 40 °C; null when it began above or never did.</summary>
    public double? ToFortyS { get; init; }

    /// <summary>Seconds from the start until the mean reached 60 °C; null when it began above or never did.</summary>
    public double? ToSixtyS { get; init; }

    /// <summary>Mean of the surroundings, degrees Celsius; null without that probe.</summary>
    public double? SurroundingsCelsius { get; init; }

    /// <summary>
    /// Of a heating run by coolant: heat gained for each kelvin that the flow was above the water, watts per kelvin.
    /// Null without a flow probe.
    /// </summary>
    public double? CoilWPerK { get; init; }

    /// <summary>
    /// Of a standing spell of six hours and 15 K or more: heat lost for each kelvin above the surroundings, watts per
    /// kelvin. Null when the spell is too short, too cool or without a surroundings probe. Where a contact tells of the
    /// valves, it is of a stretch with closed ones.
    /// </summary>
    public Estimate? LossWPerK { get; init; }

    /// <summary>Of a standing spell: length of the stretch by which its lagging is judged, seconds.</summary>
    public double JudgedS { get; init; }

    /// <summary>
    /// Of a standing spell: tank probes above the surroundings at its start, kelvin; null when one of them is not
    /// known.
    /// </summary>
    public double? StartExcessK { get; init; }

    /// <summary>
    /// Of a standing spell: water at the top above that at the bottom at its start, kelvin. A draw leaves cold water
    /// below, and then the probes' mean is not that of the water for the whole night.
    /// </summary>
    public double StartLayersK { get; init; }

    /// <summary>
    /// Of a standing spell: share of it with the valves to the coil open, 0 to 1; null where nobody tells.
    /// </summary>
    public double? ValvesOpenShare { get; init; }

    /// <summary>Of a standing spell: share of it in which coolant took heat out by its own buoyancy, 0 to 1.</summary>
    public double CirculatedShare { get; init; }

    /// <summary>What ended it.</summary>
    public JourneyEnd EndedBy { get; init; }

    /// <summary>Parts that were above their rating; empty when none was.</summary>
    public IReadOnlyList<PartMinutes> OverRating { get; init; } = [];
}
