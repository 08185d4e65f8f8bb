using System.Text.Json.Serialization;

namespace OnboardHeat.Engine.Pictures;

/// <summary>What a person can plan by. An unknown figure is null.</summary>
public sealed record ForecastForm
{
    /// <summary>
    /// Heat in water and vessel above the cold supply, kilowatt-hours; negative when colder than that.
    /// </summary>
    [JsonPropertyName("storedEnergyKWh")]
    public double? StoredEnergyKWh { get; init; }

    /// <summary>How long mixed water lasts with heating off, minutes.</summary>
    public double? ShowerMinutes { get; init; }

    /// <summary>Lower end of a range that holds the truth 90 % of the time, minutes.</summary>
    public double? ShowerMinutesLow { get; init; }

    /// <summary>Upper end of that range, minutes.</summary>
    public double? ShowerMinutesHigh { get; init; }

    /// <summary>Litres of mixed water that those minutes are.</summary>
    public double? MixedLitres { get; init; }

    /// <summary><c>now</c>, <c>at</c>, <c>not-at-this-rate</c>, <c>not-heating</c> or <c>unknown</c>.</summary>
    public required string Ready { get; init; }

    /// <summary>Wall clock at which a useful shower is there; with <c>at</c> and a trusted clock only.</summary>
    public string? ReadyAt { get; init; }

    /// <summary>Seconds from the forecast until it is; with <c>at</c> only.</summary>
    public double? ReadyInS { get; init; }

    /// <summary>Minutes of driving that a useful shower still takes, when the engine stands.</summary>
    public double? DriveMinutesNeeded { get; init; }

    /// <summary><c>now-below</c>, <c>at</c>, <c>beyond-7-days</c> or <c>unknown</c>.</summary>
    public required string Until { get; init; }

    /// <summary>
    /// Wall clock at which the top falls below the usable temperature; with <c>at</c> and a trusted clock only.
    /// </summary>
    public string? UsableUntil { get; init; }

    /// <summary>Seconds from the forecast until it does; with <c>at</c> only.</summary>
    public double? UsableForS { get; init; }

    /// <summary>Highest mean temperature that this drive will reach, degrees Celsius.</summary>
    public double? PeakCelsius { get; init; }

    /// <summary>Seconds until water in the tank nears freezing; null when not within seven days or not known.</summary>
    public double? FrostInS { get; init; }

    /// <summary>Heat into the water from coil and element, watts; negative when the circuit takes heat out.</summary>
    public double? HeatingWatts { get; init; }

    /// <summary>Tank heat loss per kelvin above the surroundings, watts per kelvin.</summary>
    [JsonPropertyName("lossCoefficientWPerK")]
    public double? LossCoefficientWPerK { get; init; }

    /// <summary>Monotonic seconds of the run at which the forecast was worked out.</summary>
    public required double ElapsedS { get; init; }
}
