namespace OnboardHeat.Core.Journeys;

/// <summary>The tank at one moment of a course that is laid over another.</summary>
/// <param name="AtS">Seconds from the start of the course; rising.</param>
/// <param name="WaterCelsius">Mean of the water, degrees Celsius.</param>
/// <param name="SurroundingsCelsius">
/// Air by the tank, degrees Celsius; null where it is not known: then as at the point before.
/// </param>
/// <param name="IsHeatedByCoolant">Whether warm coolant passes the coil.</param>
public readonly record struct CoursePoint(double AtS, double WaterCelsius, double? SurroundingsCelsius,
    bool IsHeatedByCoolant);
