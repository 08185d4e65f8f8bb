namespace OnboardHeat.Engine.Ports;

/// <summary>Names of the figures that the record keeps beside readings, with the unit in the name.</summary>
public static class FigureNames
{
    /// <summary>Heat in water and vessel above the cold supply, kilowatt-hours.</summary>
    public const string StoredEnergyKWh = "stored_energy_kwh";

    /// <summary>How long mixed water lasts, minutes.</summary>
    public const string ShowerMinutes = "shower_minutes";

    /// <summary>Lower end of its 90 % range, minutes.</summary>
    public const string ShowerMinutesLow = "shower_minutes_low";

    /// <summary>Upper end of its 90 % range, minutes.</summary>
    public const string ShowerMinutesHigh = "shower_minutes_high";

    /// <summary>Heat into the water, watts; negative when the circuit takes heat out.</summary>
    public const string HeatingWatts = "heating_watts";

    /// <summary>Heat loss per kelvin above the surroundings, watts per kelvin.</summary>
    public const string LossCoefficientWPerK = "loss_coefficient_w_per_k";

    /// <summary>All of them, in the order in which <see cref="RecordedFigures.Values"/> holds them.</summary>
    public static IReadOnlyList<string> All { get; } =
        [StoredEnergyKWh, ShowerMinutes, ShowerMinutesLow, ShowerMinutesHigh, HeatingWatts, LossCoefficientWPerK];
}
