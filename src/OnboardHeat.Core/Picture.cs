using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Journeys;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;
using OnboardHeat.Core.Watch;
using OnboardHeat.Core.Works;

namespace OnboardHeat.Core;

/// <summary>What the van's hot water looks like after one scan. Never changes once made; outputs may keep it.</summary>
public sealed record Picture
{
    /// <summary>Run number.</summary>
    public required int Run { get; init; }

    /// <summary>Time since the run began.</summary>
    public required TimeSpan Elapsed { get; init; }

    /// <summary>Wall clock, a label; null where there is none.</summary>
    public DateTimeOffset? Utc { get; init; }

    /// <summary>Whether the wall clock was known to be right.</summary>
    public bool IsUtcTrusted { get; init; }

    /// <summary>Every channel after screening, in the order of <see cref="Channels.All"/>.</summary>
    public required IReadOnlyList<ScreenedReading> Readings { get; init; }

    /// <summary>The tank.</summary>
    public required TankEstimate Tank { get; init; }

    /// <summary>The coolant circuit.</summary>
    public required CircuitEstimate Circuit { get; init; }

    /// <summary>The newest forecast; its own time says how old it is.</summary>
    public required Forecast Forecast { get; init; }

    /// <summary>Alarms that are not normal, most urgent first.</summary>
    public required IReadOnlyList<AlarmSnapshot> Alarms { get; init; }

    /// <summary>Alarms whose condition came or went in this scan.</summary>
    public required IReadOnlyList<AlarmChange> Changes { get; init; }

    /// <summary>Journeys that this scan ended; usually none.</summary>
    public IReadOnlyList<Journey> Journeys { get; init; } = [];

    /// <summary>Whether works on the circuit are under way.</summary>
    public bool IsInWorks => Works.IsUnderWay;

    /// <summary>Works on the circuit: how long, how far bleeding has come, what is still to be answered.</summary>
    public WorksReport Works { get; init; } = WorksReport.None;

    /// <summary>
    /// Every watcher and whether it can judge, in the order they look. The same list until something changes.
    /// </summary>
    public IReadOnlyList<WatcherStatus> Watching { get; init; } = [];

    /// <summary>The screened reading of one channel.</summary>
    public ScreenedReading this[Channel channel] => Readings[(int)channel];
}
