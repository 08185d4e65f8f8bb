using OnboardHeat.Core.Watch;

namespace OnboardHeat.Core;

/// <summary>What outlives a restart: what was learnt, and where the alarms stood.</summary>
public sealed record KeptState
{
    /// <summary>The state of a van seen for the first time.</summary>
    public static KeptState Fresh { get; } = new();

    /// <summary>What was learnt.</summary>
    public LearntVan Learnt { get; init; } = LearntVan.Nothing;

    /// <summary>Alarms that were not normal.</summary>
    public IReadOnlyList<KeptAlarm> Alarms { get; init; } = [];

    /// <summary>Whether works on the circuit were under way.</summary>
    public bool IsInWorks { get; init; }

    /// <summary>Seconds that works had lasted; zero when none were under way.</summary>
    public double WorksAgeS { get; init; }

    /// <summary>Whether works have ended and nobody has said yet what was changed.</summary>
    public bool AsksWhatChanged { get; init; }

    /// <summary>
    /// When lamp and buzzer were last tested, or the van first seen; null while no right clock was ever seen.
    /// </summary>
    public DateTimeOffset? Tested { get; init; }

    /// <summary>Whether the tank was drained.</summary>
    public bool IsDrained { get; init; }
}
