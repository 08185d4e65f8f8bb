namespace OnboardHeat.Engine.Imports;

/// <summary>
/// A time as a logger wrote it, taken apart: the three numbers of the date in their order, and the time of day.
/// </summary>
/// <param name="First">First number of the date.</param>
/// <param name="Second">Second number of the date.</param>
/// <param name="Third">Third number of the date.</param>
/// <param name="IsYearFirst">Whether the first number has four digits and so is the year.</param>
/// <param name="IsPointed">Whether points part the numbers: such dates begin with the day everywhere.</param>
/// <param name="OfDay">Time of day.</param>
/// <param name="Offset">Offset from UTC where one is written; else null.</param>
internal readonly record struct ForeignMoment(
    int First, int Second, int Third, bool IsYearFirst, bool IsPointed, TimeSpan OfDay, TimeSpan? Offset);
