namespace OnboardHeat.Core.Quantities;

/// <summary>
/// A point on the temperature scale, in degrees Celsius. Two points can be compared and subtracted, never added.
/// </summary>
/// <param name="Value">Degrees Celsius; finite, above -273.15.</param>
public readonly record struct Celsius(double Value) : IComparable<Celsius>
{
    /// <summary>Difference between two points: positive when <paramref name="a"/> is the warmer.</summary>
    public static KelvinDelta operator -(Celsius a, Celsius b) => new(a.Value - b.Value);

    /// <summary>The point <paramref name="rise"/> above (below, if negative) <paramref name="point"/>.</summary>
    public static Celsius operator +(Celsius point, KelvinDelta rise) => new(point.Value + rise.Value);

    /// <summary>The point <paramref name="fall"/> below (above, if negative) <paramref name="point"/>.</summary>
    public static Celsius operator -(Celsius point, KelvinDelta fall) => new(point.Value - fall.Value);

    /// <summary>Whether the first point is colder.</summary>
    public static bool operator <(Celsius a, Celsius b) => a.Value < b.Value;

    /// <summary>Whether the first point is warmer.</summary>
    public static bool operator >(Celsius a, Celsius b) => a.Value > b.Value;

    /// <summary>Whether the first point is colder or the same.</summary>
    public static bool operator <=(Celsius a, Celsius b) => a.Value <= b.Value;

    /// <summary>Whether the first point is warmer or the same.</summary>
    public static bool operator >=(Celsius a, Celsius b) => a.Value >= b.Value;

    /// <inheritdoc/>
    public int CompareTo(Celsius other) => Value.CompareTo(other.Value);

    /// <summary>One decimal and the unit, as people read it: <c>61.3 °C</c>.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Value:0.0} °C");
}
