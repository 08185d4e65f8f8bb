namespace OnboardHeat.Core.Journeys;

/// <summary>
/// Puts a course on the footing of another: what the same tank would have done from another start and in other
/// surroundings. The tank loses in proportion to its excess over the surroundings and gains in proportion to what the
/// coolant is above it, so a shift D of the water answers to a shift S of the surroundings by dD/dt = -(G + K) D / C +
/// K S / C, with G only while warm coolant passes. That is added to what was measured: whatever else happened (draws,
/// lights, the element) stays in it, and no noise is amplified.
/// </summary>
public static class LikeForLike
{
    /// <summary>The course as it would have been; one value for each point, degrees Celsius.</summary>
    /// <param name="course">The course as measured; empty gives empty.</param>
    /// <param name="startCelsius">Water at the start that it is put on, degrees Celsius.</param>
    /// <param name="surroundingsCelsius">Surroundings that it is put in, degrees Celsius; null leaves its own.</param>
    /// <param name="lossWPerK">
    /// Heat loss of the tank for each kelvin above the surroundings, watts per kelvin, zero or more.
    /// </param>
    /// <param name="coilWPerK">
    /// Conductance between coolant and water while it passes, watts per kelvin, zero or more.
    /// </param>
    /// <param name="heatJPerK">Heat of water and vessel for each kelvin, joules per kelvin, above zero.</param>
    public static IReadOnlyList<double> Put(
        IReadOnlyList<CoursePoint> course, double startCelsius, double? surroundingsCelsius, double lossWPerK,
        double coilWPerK,
        double heatJPerK)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(heatJPerK);
        var put = new double[course.Count];
        var shiftK = course.Count > 0 ? startCelsius - course[0].WaterCelsius : 0;
        var aroundK = 0.0;
        for (var i = 0; i < course.Count; i++)
        {
            var stepS = i > 0 ? course[i].AtS - course[i - 1].AtS : 0;
            if (course[i].SurroundingsCelsius is { } own && surroundingsCelsius is { } wanted)
            {
                aroundK = wanted - own;
            }

            var perS = (lossWPerK + (course[i].IsHeatedByCoolant ? coilWPerK : 0)) / heatJPerK;
            var restK = perS > 0 ? lossWPerK / heatJPerK / perS * aroundK : 0;
            shiftK = restK + ((shiftK - restK) * Math.Exp(-perS * stepS));
            put[i] = course[i].WaterCelsius + shiftK;
        }

        return put;
    }
}
