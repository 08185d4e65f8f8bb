using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Api;

/// <summary>Whether the insulation is better than before a change mark.</summary>
internal sealed record InsulationReply
{
    /// <summary>Change marks with a date, newest first: one of them may be asked about.</summary>
    public required IReadOnlyList<EventAnswer> Marks { get; init; }

    /// <summary>Date of the mark that this is about; null when there is none.</summary>
    public string? At { get; init; }

    /// <summary>
    /// <c>better</c>, <c>worse</c>, <c>no-difference-seen</c>, <c>not-enough-nights</c>; null without a mark.
    /// </summary>
    public string? Verdict { get; init; }

    /// <summary>The answer in words.</summary>
    public required string Words { get; init; }

    public double? BeforeWPerK { get; init; }

    public double? AfterWPerK { get; init; }

    public double? DifferenceWPerK { get; init; }

    public double? LowWPerK { get; init; }

    public double? HighWPerK { get; init; }

    /// <summary>Nights that it rests on.</summary>
    public IReadOnlyList<JourneyForm> Before { get; init; } = [];

    /// <summary>Nights that it rests on.</summary>
    public IReadOnlyList<JourneyForm> After { get; init; } = [];

    public IReadOnlyList<LeftOutAnswer> LeftOut { get; init; } = [];
}
