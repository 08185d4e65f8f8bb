using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Screening;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Watch;

/// <summary>What every watcher sees in a scan. Reused; read it, do not keep it.</summary>
internal sealed class WatchInput
{
    /// <summary>The van as described.</summary>
    public required VanDescription Van { get; init; }

    /// <summary>The screened scan.</summary>
    public required ScreenedScan Scan { get; set; }

    /// <summary>The tank after this scan.</summary>
    public TankEstimate Tank { get; set; } = TankEstimate.Unknown;

    /// <summary>The coolant circuit after this scan.</summary>
    public CircuitEstimate Circuit { get; set; } = CircuitEstimate.Unknown;

    /// <summary>What the signs of the coolant circuit look at.</summary>
    public required Loop Loop { get; init; }

    /// <summary>What those signs add up to.</summary>
    public required LossTest Test { get; init; }

    /// <summary>Whether works on the circuit are under way.</summary>
    public bool IsInWorks { get; set; }

    /// <summary>Seconds that works have lasted; zero when none are under way.</summary>
    public double WorksAgeS { get; set; }

    /// <summary>
    /// Seconds until water in the tank nears freezing, as it cools now; null when it will not within seven days or is
    /// not known.
    /// </summary>
    public double? FrostInS { get; set; }

    /// <summary>Days since lamp and buzzer were tested, not negative; null while no right clock tells.</summary>
    public double? DaysSinceTest { get; set; }

    /// <summary>Whether the tank is drained.</summary>
    public bool IsDrained { get; set; }

    /// <summary>
    /// Whether something can be said of the tank: there is an estimate, or it is known to be empty; null where no tank
    /// probe is fitted.
    /// </summary>
    public bool? CanJudgeTank => Van.Fitted.HasTankProbe ? Tank.IsKnown || IsDrained : null;

    /// <summary>Whether there is water in the tank of which an estimate tells.</summary>
    public bool HoldsKnownWater => Tank.IsKnown && !IsDrained;
}
