using OnboardHeat.Core.Quantities;
using OnboardHeat.Core.Statistics;

namespace OnboardHeat.Core.Journeys;

/// <summary>
/// Compares how fast the tank cooled in the nights before and after a change of its lagging. A night counts as one
/// value, however many scans it has: what differs from night to night (wind, doors, where the van stands) is the chance
/// that matters.
/// </summary>
public static class InsulationComparison
{
    /// <summary>How often the interval is to hold the truth.</summary>
    private const double IntervalShare = 0.9;

    /// <summary>
    /// What every night has in common (the stated volume, where the surroundings' probe hangs) makes a difference too
    /// large or too small by this share of itself, one deviation. Simulated vans with their probe near the tank gave
    /// 1.05 times the true figure.
    /// </summary>
    private const double ScaleShare = 0.04;

    /// <summary>
    /// Coolant that turned for more than this share of a night spoils it: it moves ten times what the lagging lets
    /// through.
    /// </summary>
    private const double SpoiltShare = 0.01;

    /// <summary>
    /// A tank that is layered by more than this at the start of a night, kelvin, was drawn from. In the simulated van a
    /// night after a draw of one to four minutes gave 0.30 to 0.96 W/K where 0.80 was true.
    /// </summary>
    private const double LayeredK = 8;

    /// <summary>
    /// Compares the standing spells among the journeys of both sides; other journeys are passed over.
    /// </summary>
    public static InsulationAnswer Of(IEnumerable<Journey> before, IEnumerable<Journey> after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        List<LeftOutNight> leftOut = [];
        var old = Fit(before, false, leftOut);
        var young = Fit(after, true, leftOut);
        var (oldSample, youngSample) = (SampleOf(old), SampleOf(young));
        var difference = MeanDifference.Of(oldSample, youngSample);
        var half = difference is { } known ? HalfWidth(known, old, young) : (double?)null;
        return new InsulationAnswer
        {
            Verdict = VerdictOf(difference?.Difference, half),
            Before = old,
            After = young,
            LeftOut = leftOut,
            BeforeWPerK = old.Count > 0 ? oldSample.Mean : null,
            AfterWPerK = young.Count > 0 ? youngSample.Mean : null,
            DifferenceWPerK = old.Count > 0 && young.Count > 0 ? youngSample.Mean - oldSample.Mean : null,
            LowWPerK = difference?.Difference - half,
            HighWPerK = difference?.Difference + half,
        };
    }

    /// <summary>Why a standing spell cannot be used; null when it can.</summary>
    public static NightReason? ReasonAgainst(Journey night)
    {
        ArgumentNullException.ThrowIfNull(night);
        var isShort = night.ToS - night.FromS < CoolingStretch.LongEnoughS;
        return night switch
        {
            { EndedBy: JourneyEnd.Draw } when isShort => NightReason.Draw,
            { EndedBy: JourneyEnd.Element } when isShort => NightReason.Element,
            _ when isShort => NightReason.TooShort,
            { JudgedS: < CoolingStretch.LongEnoughS } => NightReason.ValvesOpen,
            { CirculatedShare: > SpoiltShare } => NightReason.Circulation,
            { StartLayersK: > LayeredK } => NightReason.Draw,
            { StartExcessK: null } => NightReason.SurroundingsUnknown,
            { StartExcessK: < CoolingStretch.WarmEnoughK } => NightReason.TooCool,
            { LossWPerK: null, SurroundingsCelsius: null } => NightReason.SurroundingsUnknown,
            { LossWPerK: null } => NightReason.NotCooling,
            _ => null,
        };
    }

    private static List<Journey> Fit(IEnumerable<Journey> journeys, bool isAfter, List<LeftOutNight> leftOut)
    {
        List<Journey> fit = [];
        foreach (var night in journeys.Where(journey => journey.Type == JourneyType.Standing))
        {
            if (ReasonAgainst(night) is { } why)
            {
                leftOut.Add(new LeftOutNight(night, isAfter, why));
            }
            else
            {
                fit.Add(night);
            }
        }

        return fit;
    }

    /// <summary>
    /// Nights differ by chance, and each is measured only so well: whichever is more counts, because few nights may be
    /// alike by luck.
    /// </summary>
    private static double HalfWidth(MeanDifference difference, List<Journey> old, List<Journey> young)
    {
        var measuredWPerK = Math.Sqrt(MeanVariance(old) + MeanVariance(young));
        var byChance = difference with { StandardError = Math.Max(difference.StandardError, measuredWPerK) };
        return double.Hypot(
            byChance.HalfWidth(IntervalShare), Estimate.NinetyPercent * ScaleShare * Math.Abs(difference.Difference));
    }

    /// <summary>Variance of the mean of some nights by their own deviations.</summary>
    private static double MeanVariance(List<Journey> nights) =>
        nights.Average(night => night.LossWPerK!.Value.Deviation * night.LossWPerK.Value.Deviation) / nights.Count;

    private static Sample SampleOf(List<Journey> nights) =>
        Sample.Of([.. nights.Select(night => night.LossWPerK!.Value.Value)]);

    private static InsulationVerdict VerdictOf(double? difference, double? half) => (difference, half) switch
    {
        (null, _) or (_, null) => InsulationVerdict.NotEnoughNights,
        ({ } d, { } h) when d + h < 0 => InsulationVerdict.Better,
        ({ } d, { } h) when d - h > 0 => InsulationVerdict.Worse,
        _ => InsulationVerdict.NoDifferenceSeen,
    };
}
