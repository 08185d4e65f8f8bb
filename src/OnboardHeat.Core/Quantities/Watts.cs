namespace OnboardHeat.Core.Quantities;

/// <summary>A heat flow in watts. Heat into the tank is positive.</summary>
/// <param name="Value">Watts; finite.</param>
public readonly record struct Watts(double Value) : IComparable<Watts>
{
    /// <summary>Sum of both.</summary>
    public static Watts operator +(Watts a, Watts b) => new(a.Value + b.Value);

    /// <summary>The first less the second.</summary>
    public static Watts operator -(Watts a, Watts b) => new(a.Value - b.Value);

    /// <summary>The quantity with its sign turned.</summary>
    public static Watts operator -(Watts a) => new(-a.Value);

    /// <summary>The quantity scaled by a pure number.</summary>
    public static Watts operator *(Watts a, double factor) => new(a.Value * factor);

    /// <summary>Whether the first is the smaller.</summary>
    public static bool operator <(Watts a, Watts b) => a.Value < b.Value;

    /// <summary>Whether the first is the larger.</summary>
    public static bool operator >(Watts a, Watts b) => a.Value > b.Value;

    /// <summary>Whether the first is the smaller or both are the same.</summary>
    public static bool operator <=(Watts a, Watts b) => a.Value <= b.Value;

    /// <summary>Whether the first is the larger or both are the same.</summary>
    public static bool operator >=(Watts a, Watts b) => a.Value >= b.Value;

    /// <summary>Heat carried in <paramref name="span"/> at this constant flow.</summary>
    public Joules Over(TimeSpan span) => new(Value * span.TotalSeconds);

    /// <inheritdoc/>
    public int CompareTo(Watts other) => Value.CompareTo(other.Value);

    /// <summary>The number and its unit, as people read it.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Value:0} W");
}
