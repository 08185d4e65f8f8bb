using OnboardHeat.Core.Journeys;

namespace OnboardHeat.Engine.Review;

/// <summary>One of two courses that are laid over each other.</summary>
/// <param name="Points">As measured.</param>
/// <param name="PutCelsius">
/// As it would have been on the common footing; one value for each point, degrees Celsius.
/// </param>
/// <param name="LossWPerK">Loss coefficient that was used for it, watts per kelvin.</param>
/// <param name="CoilWPerK">Coil conductance that was used for it, watts per kelvin.</param>
public sealed record OverlaidCourse(
    IReadOnlyList<CoursePoint> Points, IReadOnlyList<double> PutCelsius, double LossWPerK, double CoilWPerK);
