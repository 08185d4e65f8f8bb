namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// How fast the day passes. When something critical is told, time slows down for a while, so that a person can read
/// what it says; with no speed limit it never does.
/// </summary>
internal sealed class DemoPace(double speed)
{
    /// <summary>How much slower, and for how many seconds of the day.</summary>
    private const double SlowFactor = 12, SlowForS = 150;

    private double _slowUntilS = double.NegativeInfinity;

    /// <summary>Whether no real time passes between moments.</summary>
    public bool IsUnlimited => double.IsPositiveInfinity(speed);

    public void Critical(double elapsedS) => _slowUntilS = elapsedS + SlowForS;

    /// <summary>Seconds of the day for each real second.</summary>
    public double At(double elapsedS) => elapsedS < _slowUntilS ? Math.Max(1, speed / SlowFactor) : speed;
}
