namespace OnboardHeat.Core.Quantities;

/// <summary>
/// A figure that is not known exactly: value, how sure, how old, from how many readings. The unit is that of the
/// figure.
/// </summary>
/// <param name="Value">Best value, in the unit of the figure.</param>
/// <param name="Deviation">
/// One standard deviation, same unit, zero or more. Unknown is a wide deviation, not zero.
/// </param>
/// <param name="Age">Time since the newest reading that bears on it.</param>
/// <param name="Count">How many readings (or spells) it rests on; zero for a prior.</param>
public readonly record struct Estimate(double Value, double Deviation, TimeSpan Age, int Count)
{
    /// <summary>
    /// Half width of a 90 % interval in standard deviations of a normal distribution (1.645, any table of it).
    /// </summary>
    public const double NinetyPercent = 1.645;

    /// <summary>Lower end of the 90 % interval.</summary>
    public double Low => Value - (NinetyPercent * Deviation);

    /// <summary>Upper end of the 90 % interval.</summary>
    public double High => Value + (NinetyPercent * Deviation);
}
