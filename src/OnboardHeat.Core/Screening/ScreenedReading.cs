namespace OnboardHeat.Core.Screening;

/// <summary>A reading after screening: believed or not, why not, and the last value that was.</summary>
/// <param name="Value">Degrees Celsius last believed; zero if none ever was (see <see cref="AgeS"/>).</param>
/// <param name="Fault">Why this scan's reading is not believed; <see cref="ReadingFault.None"/> when it is.</param>
/// <param name="AgeS">
/// Seconds since a reading was last believed: zero when this one is, infinite when none ever was.
/// </param>
public readonly record struct ScreenedReading(double Value, ReadingFault Fault, double AgeS)
{
    /// <summary>Whether this scan's own reading is believed.</summary>
    public bool IsGood => Fault == ReadingFault.None;

    /// <summary>Whether any reading was ever believed.</summary>
    public bool IsKnown => double.IsFinite(AgeS);
}
