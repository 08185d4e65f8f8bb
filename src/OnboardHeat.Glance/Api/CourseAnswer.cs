namespace OnboardHeat.Glance.Api;

/// <summary>One of two courses laid over each other.</summary>
/// <param name="T">Seconds from its own start.</param>
/// <param name="WaterCelsius">Mean of the tank's probes as measured.</param>
/// <param name="PutCelsius">The same on the common footing.</param>
/// <param name="LossWPerK">Loss coefficient that was used, watts per kelvin.</param>
/// <param name="CoilWPerK">Coil conductance that was used, watts per kelvin.</param>
internal sealed record CourseAnswer(double[] T, double[] WaterCelsius, double[] PutCelsius, double LossWPerK,
    double CoilWPerK);
