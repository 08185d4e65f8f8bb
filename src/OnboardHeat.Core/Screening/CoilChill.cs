using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// Water that cools sinks: while coolant colder than the tank passes the coil, the lower of two probes falls and the
/// upper one stands. It tells the order of two probes whose tank is mixed but for that minute after a cold start, and
/// no offset plays a part.
/// </summary>
internal sealed class CoilChill(Channel upper, Channel lower)
{
    private double _upper = double.NaN;
    private double _lower;
    private double _upperThen;
    private double _lowerThen;

    /// <summary>
    /// True when the upper fell and the lower stood, false the right way round, null when nothing is told.
    /// </summary>
    public bool? IsUpperTheLower(ScreenedScan scan)
    {
        if (!Chills(scan))
        {
            _upper = double.NaN;
            return null;
        }

        if (double.IsNaN(_upper))
        {
            (_upper, _lower) = (scan[upper].Value, scan[lower].Value);
            (_upperThen, _lowerThen) = (_upper, _lower);
        }

        var share = scan.StepS / (scan.StepS + ScreeningPolicy.ChillSmoothS);
        _upper += share * (scan[upper].Value - _upper);
        _lower += share * (scan[lower].Value - _lower);
        var (upperFellK, lowerFellK) = (_upperThen - _upper, _lowerThen - _lower);
        return (upperFellK, lowerFellK) switch
        {
            (>= ScreeningPolicy.ChillFallK, < ScreeningPolicy.ChillStandsK) => true,
            (< ScreeningPolicy.ChillStandsK, >= ScreeningPolicy.ChillFallK) => false,
            _ => null,
        };
    }

    private bool Chills(ScreenedScan scan)
    {
        if (!scan[Channel.Flow].IsGood || !scan[Channel.Return].IsGood || scan[Signal.EngineRunning] == false)
        {
            return false;
        }

        var coldest = Math.Min(scan[upper].Value, scan[lower].Value);
        return scan[Channel.Flow].Value < coldest - ScreeningPolicy.ChillBelowK && scan[Channel.Return].Value < coldest;
    }
}
