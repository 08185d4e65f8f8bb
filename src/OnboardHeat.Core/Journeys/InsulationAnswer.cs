namespace OnboardHeat.Core.Journeys;

/// <summary>Whether the lagging is better than before, and what that rests on.</summary>
public sealed record InsulationAnswer
{
    /// <summary>The answer.</summary>
    public required InsulationVerdict Verdict { get; init; }

    /// <summary>Standing spells before the change that it rests on.</summary>
    public required IReadOnlyList<Journey> Before { get; init; }

    /// <summary>Standing spells after the change that it rests on.</summary>
    public required IReadOnlyList<Journey> After { get; init; }

    /// <summary>Standing spells that were left out, and why.</summary>
    public required IReadOnlyList<LeftOutNight> LeftOut { get; init; }

    /// <summary>Mean heat loss before, watts per kelvin above the surroundings; null without a night.</summary>
    public double? BeforeWPerK { get; init; }

    /// <summary>Mean heat loss after, watts per kelvin above the surroundings; null without a night.</summary>
    public double? AfterWPerK { get; init; }

    /// <summary>
    /// After less before, watts per kelvin; negative when the tank loses less. Null without a night on each side.
    /// </summary>
    public double? DifferenceWPerK { get; init; }

    /// <summary>
    /// Lower end of the 90 % interval of the difference, watts per kelvin; null when there are not enough nights.
    /// </summary>
    public double? LowWPerK { get; init; }

    /// <summary>Upper end of it.</summary>
    public double? HighWPerK { get; init; }
}
