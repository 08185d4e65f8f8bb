namespace OnboardHeat.Core.Circuit;

/// <summary>
/// Page's cumulative sum: adds up evidence, never below zero, so that it starts afresh whenever the evidence speaks for
/// the ordinary. E. S. Page, Biometrika 41 (1954) 100. Fed with log likelihood ratios it is the sequential test that
/// finds a change soonest for a given rate of false alarms.
/// </summary>
internal sealed class Cusum(double ceiling = double.PositiveInfinity)
{
    /// <summary>What has added up; zero or more, at most the ceiling.</summary>
    public double Sum { get; private set; }

    /// <summary>Adds one step's evidence: positive speaks for the change, negative against.</summary>
    public void Add(double evidence) => Sum = Math.Clamp(Sum + evidence, 0, ceiling);

    /// <summary>Starts again from nothing.</summary>
    public void Reset() => Sum = 0;
}
