namespace OnboardHeat.Daemon.Probing;

/// <summary>
/// Finds the probe that is warmed in the hand: it rises while the others stay. Several that rise together are no hand,
/// and none is named.
/// </summary>
internal sealed class WarmedProbe
{
    /// <summary>
    /// Sixteen steps of a DS18B20: a hand on a cool probe brings five in a minute (hardware-notes, proving).
    /// </summary>
    public const double RiseK = 1;

    /// <summary>How much of its rise another probe may show: drift of the day, warmth of a neighbour's cable.</summary>
    private const double OthersShare = 1.0 / 3;

    private readonly Dictionary<string, double> _lowestC = new(StringComparer.Ordinal);
    private readonly HashSet<string> _named = new(StringComparer.Ordinal);

    /// <summary>How many have been named so far.</summary>
    public int Named => _named.Count;

    /// <summary>Takes a look at the bus; the probe that has just shown itself, once each.</summary>
    public ProbeSight? Observe(BusSight sight)
    {
        ProbeSight? best = null;
        var (bestK, nextK) = (0.0, 0.0);
        foreach (var probe in sight.Probes)
        {
            // One that was named before is still warm, or cools: it says nothing of the next.
            if (probe.Celsius is not { } celsius || _named.Contains(probe.Rom))
            {
                continue;
            }

            _lowestC[probe.Rom] = Math.Min(celsius, _lowestC.GetValueOrDefault(probe.Rom, celsius));
            var riseK = celsius - _lowestC[probe.Rom];
            if (best is null || riseK > bestK)
            {
                (best, nextK, bestK) = (probe, best is null ? 0 : bestK, riseK);
            }
            else
            {
                nextK = Math.Max(nextK, riseK);
            }
        }

        if (best is null || bestK < RiseK || nextK > bestK * OthersShare)
        {
            return null;
        }

        _named.Add(best.Rom);
        _lowestC.Clear();
        return best;
    }
}
