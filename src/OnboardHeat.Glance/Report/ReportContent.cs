using OnboardHeat.Engine.Ports;
using OnboardHeat.Engine.Review;

namespace OnboardHeat.Glance.Report;

/// <summary>Everything that a report shows.</summary>
internal sealed record ReportContent
{
    public required string VanId { get; init; }

    public required DateTimeOffset From { get; init; }

    public required DateTimeOffset To { get; init; }

    public required bool IsShared { get; init; }

    public required IReadOnlyList<DatedJourney> Journeys { get; init; }

    public required IReadOnlyList<ChartLine> Lines { get; init; }

    public required IReadOnlyList<RecordedEvent> Events { get; init; }

    public required IReadOnlyList<RecordedRun> Undated { get; init; }

    /// <summary>Whether the insulation is better; null where no mark of it lies in the span.</summary>
    public ReviewedInsulation? Insulation { get; init; }
}
