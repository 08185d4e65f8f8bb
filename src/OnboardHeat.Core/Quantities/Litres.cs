namespace OnboardHeat.Core.Quantities;

/// <summary>A volume in litres (1 litre = 0.001 cubic metre, exact).</summary>
/// <param name="Value">Litres; not negative where it is a content.</param>
public readonly record struct Litres(double Value) : IComparable<Litres>
{
    /// <summary>Sum of both.</summary>
    public static Litres operator +(Litres a, Litres b) => new(a.Value + b.Value);

    /// <summary>The first less the second.</summary>
    public static Litres operator -(Litres a, Litres b) => new(a.Value - b.Value);

    /// <summary>The quantity with its sign turned.</summary>
    public static Litres operator -(Litres a) => new(-a.Value);

    /// <summary>The quantity scaled by a pure number.</summary>
    public static Litres operator *(Litres a, double factor) => new(a.Value * factor);

    /// <summary>Whether the first is the smaller.</summary>
    public static bool operator <(Litres a, Litres b) => a.Value < b.Value;

    /// <summary>Whether the first is the larger.</summary>
    public static bool operator >(Litres a, Litres b) => a.Value > b.Value;

    /// <summary>Whether the first is the smaller or both are the same.</summary>
    public static bool operator <=(Litres a, Litres b) => a.Value <= b.Value;

    /// <summary>Whether the first is the larger or both are the same.</summary>
    public static bool operator >=(Litres a, Litres b) => a.Value >= b.Value;

    /// <inheritdoc/>
    public int CompareTo(Litres other) => Value.CompareTo(other.Value);

    /// <summary>The number and its unit, as people read it.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Value:0.0} l");
}
