namespace OnboardHeat.Core.Quantities;

/// <summary>An amount of heat in joules. Heat into the tank is positive.</summary>
/// <param name="Value">Joules; finite.</param>
public readonly record struct Joules(double Value) : IComparable<Joules>
{
    /// <summary>Sum of both.</summary>
    public static Joules operator +(Joules a, Joules b) => new(a.Value + b.Value);

    /// <summary>The first less the second.</summary>
    public static Joules operator -(Joules a, Joules b) => new(a.Value - b.Value);

    /// <summary>The quantity with its sign turned.</summary>
    public static Joules operator -(Joules a) => new(-a.Value);

    /// <summary>The quantity scaled by a pure number.</summary>
    public static Joules operator *(Joules a, double factor) => new(a.Value * factor);

    /// <summary>The constant flow that carries this heat in a span.</summary>
    public static Watts operator /(Joules a, TimeSpan span) => new(a.Value / span.TotalSeconds);

    /// <summary>Whether the first is the smaller.</summary>
    public static bool operator <(Joules a, Joules b) => a.Value < b.Value;

    /// <summary>Whether the first is the larger.</summary>
    public static bool operator >(Joules a, Joules b) => a.Value > b.Value;

    /// <summary>Whether the first is the smaller or both are the same.</summary>
    public static bool operator <=(Joules a, Joules b) => a.Value <= b.Value;

    /// <summary>Whether the first is the larger or both are the same.</summary>
    public static bool operator >=(Joules a, Joules b) => a.Value >= b.Value;

    /// <summary>So many kilowatt-hours of heat.</summary>
    public static Joules OfKilowattHours(double kilowattHours) => new(kilowattHours * 3.6e6);

    /// <summary>The same heat in kilowatt-hours (1 kWh = 3.6 MJ, exact by definition).</summary>
    public double KilowattHours => Value / 3.6e6;

    /// <inheritdoc/>
    public int CompareTo(Joules other) => Value.CompareTo(other.Value);

    /// <summary>The number and its unit, as people read it.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{KilowattHours:0.000} kWh");
}
