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

    /// <summary>
    /// Of the gain, what came while the element was on and the engine off, kilowatt-hours; null where <c>element_on</c>
    /// is not fitted.
    /// </summary>
    public double? ElementKWh { get; init; }

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
    /// kelvin. Null when the spell is too short, too cool or without a surroundings probe.
    /// </summary>
    public Estimate? LossWPerK { get; init; }

    /// <summary>Parts that were above their rating; empty when none was.</summary>
    public IReadOnlyList<PartMinutes> OverRating { get; init; } = [];
}
