namespace OnboardHeat.Core.Shower;

/// <summary>What a person can plan by, worked out from the state after one scan. An unknown figure is null.</summary>
public sealed record Forecast
{
    /// <summary>Nothing can be told.</summary>
    public static Forecast Unknown { get; } = new();

    /// <summary>Elapsed seconds of the run at which it was worked out.</summary>
    public double ElapsedS { get; init; }

    /// <summary>Heat in water and vessel above the cold supply, kilowatt-hours.</summary>
    public double? StoredEnergyKWh { get; init; }

    /// <summary>One standard deviation of the stored energy, kilowatt-hours.</summary>
    public double? StoredEnergyDeviationKWh { get; init; }

    /// <summary>
    /// How long mixed water lasts with heating off, until the mix falls 1 K below its set point; minutes.
    /// </summary>
    public double? ShowerMinutes { get; init; }

    /// <summary>Lower end of a range that holds the truth 90 % of the time, minutes.</summary>
    public double? ShowerMinutesLow { get; init; }

    /// <summary>Upper end of that range, minutes.</summary>
    public double? ShowerMinutesHigh { get; init; }

    /// <summary>Litres of mixed water that those minutes are.</summary>
    public double? MixedLitres { get; init; }

    /// <summary>When a useful shower is there, heating on as now.</summary>
    public ReadyKind Ready { get; init; }

    /// <summary>Seconds from this scan until it is; only with <see cref="ReadyKind.At"/>.</summary>
    public double? ReadyInS { get; init; }

    /// <summary>
    /// Minutes of driving that a useful shower still takes, when the engine stands; null when not known or not needed.
    /// </summary>
    public double? DriveMinutesNeeded { get; init; }

    /// <summary>Until when the top stays usable, standing untouched.</summary>
    public UntilKind Until { get; init; }

    /// <summary>Seconds from this scan until it falls below; only with <see cref="UntilKind.At"/>.</summary>
    public double? UsableForS { get; init; }

    /// <summary>Highest mean temperature that this drive will reach, degrees Celsius.</summary>
    public double? PeakCelsius { get; init; }

    /// <summary>
    /// Seconds until water in the tank nears freezing; null when it will not within seven days or it is not known.
    /// </summary>
    public double? FrostInS { get; init; }

    /// <summary>Heat into the water from coil and element, watts; negative when the circuit takes heat out.</summary>
    public double? HeatingWatts { get; init; }

    /// <summary>Heat loss per kelvin above the surroundings, watts per kelvin.</summary>
    public double? LossCoefficientWPerK { get; init; }
}
