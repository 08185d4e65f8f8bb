namespace OnboardHeat.Core.Screening;

/// <summary>
/// The last reading of a probe and the step that led to it: enough to see whether the next one follows.
/// </summary>
/// <param name="Celsius">Last reading, degrees Celsius.</param>
/// <param name="AtS">When it was taken, elapsed seconds; minus infinity when there is none.</param>
/// <param name="StepK">Change from the reading before; zero when there is none.</param>
/// <param name="OverS">Seconds that change took; zero when there is none.</param>
internal readonly record struct Trail(double Celsius, double AtS, double StepK, double OverS)
{
    public static Trail Empty { get; } = new(0, double.NegativeInfinity, 0, 0);

    public bool IsEmpty => double.IsNegativeInfinity(AtS);

    public Trail Next(double celsius, double elapsedS) =>
        IsEmpty ? new Trail(celsius, elapsedS, 0, 0) : new Trail(celsius, elapsedS, celsius - Celsius, elapsedS - AtS);

    /// <summary>Whether the next reading goes back as far and as fast as no lagging probe can.</summary>
    public bool Turns(double celsius, double elapsedS)
    {
        var stepK = celsius - Celsius;
        return OverS > 0 && OverS + elapsedS - AtS <= ScreeningPolicy.TurnWithinS && stepK * StepK < 0
            && Math.Min(Math.Abs(stepK), Math.Abs(StepK)) > ScreeningPolicy.TurnK;
    }

    /// <summary>
    /// Whether the next reading continues the slope so far, give or take what a lag changes in a scan.
    /// </summary>
    public bool IsSmooth(double celsius, double elapsedS)
    {
        if (OverS <= 0)
        {
            return true;
        }

        var stepK = celsius - Celsius;
        var expectedK = StepK * (elapsedS - AtS) / OverS;
        var allowedK = ScreeningPolicy.SmoothSlackK
            + (ScreeningPolicy.SmoothShare * Math.Max(Math.Abs(stepK), Math.Abs(expectedK)));
        return Math.Abs(stepK - expectedK) <= allowedK;
    }
}
