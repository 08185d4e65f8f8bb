namespace OnboardHeat.Core.Quantities;

/// <summary>A temperature difference in kelvin.</summary>
/// <param name="Value">Kelvin; positive is warmer; finite.</param>
public readonly record struct KelvinDelta(double Value) : IComparable<KelvinDelta>
{
    /// <summary>Sum of both.</summary>
    public static KelvinDelta operator +(KelvinDelta a, KelvinDelta b) => new(a.Value + b.Value);

    /// <summary>The first less the second.</summary>
    public static KelvinDelta operator -(KelvinDelta a, KelvinDelta b) => new(a.Value - b.Value);

    /// <summary>The quantity with its sign turned.</summary>
    public static KelvinDelta operator -(KelvinDelta a) => new(-a.Value);

    /// <summary>The quantity scaled by a pure number.</summary>
    public static KelvinDelta operator *(KelvinDelta a, double factor) => new(a.Value * factor);

    /// <summary>How many times the second the first is; a pure number.</summary>
    public static double operator /(KelvinDelta a, KelvinDelta b) => a.Value / b.Value;

    /// <summary>Whether the first is the smaller.</summary>
    public static bool operator <(KelvinDelta a, KelvinDelta b) => a.Value < b.Value;

    /// <summary>Whether the first is the larger.</summary>
    public static bool operator >(KelvinDelta a, KelvinDelta b) => a.Value > b.Value;

    /// <summary>Whether the first is the smaller or both are the same.</summary>
    public static bool operator <=(KelvinDelta a, KelvinDelta b) => a.Value <= b.Value;

    /// <summary>Whether the first is the larger or both are the same.</summary>
    public static bool operator >=(KelvinDelta a, KelvinDelta b) => a.Value >= b.Value;

    /// <inheritdoc/>
    public int CompareTo(KelvinDelta other) => Value.CompareTo(other.Value);

    /// <summary>The number and its unit, as people read it.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Value:0.0} K");
}
