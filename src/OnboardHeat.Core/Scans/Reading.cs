using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Scans;

/// <summary>What one probe gave in one scan: a temperature, or the named reason why there is none.</summary>
/// <param name="Value">Degrees Celsius, offset already added. Meaningless unless <see cref="HasValue"/>.</param>
/// <param name="Fault">What the adapter itself saw to be wrong; <see cref="ReadingFault.None"/> otherwise.</param>
public readonly record struct Reading(double Value, ReadingFault Fault)
{
    /// <summary>No reading.</summary>
    public static Reading None { get; } = new(0, ReadingFault.Missing);

    /// <summary>Whether there is a temperature to judge.</summary>
    public bool HasValue => Fault == ReadingFault.None;

    /// <summary>A temperature as read.</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The value is NaN or infinite: the adapter must name a fault instead.
    /// </exception>
    public static Reading Of(double celsius) => double.IsFinite(celsius)
        ? new Reading(celsius, ReadingFault.None)
        : throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A reading is finite, or a named fault.");

    /// <summary>A reading that failed for a named reason.</summary>
    public static Reading Failed(ReadingFault fault) => new(0, fault);
}
