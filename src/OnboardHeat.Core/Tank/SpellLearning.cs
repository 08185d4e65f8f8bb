using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Learns one figure of the van from spell to spell: a spell's result is joined to what was known by their deviations,
/// and one that lies far off is clipped, so that one odd night moves little.
/// </summary>
internal sealed class SpellLearning(Estimate? known, double leastSpellS, double leastShare)
{
    /// <summary>A spell further off than this many joint deviations counts as this far off.</summary>
    private const double ClipDeviations = 2;

    /// <summary>How much less sure an odd spell makes what is known.</summary>
    private const double DoubtRatio = 1.3;

    /// <summary>A van ages: what is known never weighs more than so many spells.</summary>
    private const int MostSpells = 20;

    private double _spellS;

    /// <summary>What is known so far; null for nothing.</summary>
    public Estimate? Known { get; private set; } = known;

    /// <summary>Takes the state of the running spell; when it ends after long enough, its figure is learnt.</summary>
    /// <param name="isOn">Whether the spell runs.</param>
    /// <param name="stepS">Seconds since the last call.</param>
    /// <param name="value">The spell's figure.</param>
    /// <param name="deviation">Its deviation, same unit.</param>
    public void Observe(bool isOn, double stepS, double value, double deviation)
    {
        if (isOn)
        {
            _spellS += stepS;
            return;
        }

        if (_spellS >= leastSpellS)
        {
            Known = Joined(value, Math.Max(deviation, leastShare * Math.Abs(value)));
        }

        _spellS = 0;
    }

    /// <summary>What would be known if the run ended now: a spell that is long enough counts.</summary>
    public Estimate? KnownNow(double value, double deviation) =>
        _spellS >= leastSpellS ? Joined(value, Math.Max(deviation, leastShare * Math.Abs(value))) : Known;

    /// <summary>A change of the van: all is learnt anew.</summary>
    public void Forget() => (Known, _spellS) = (null, 0);

    private Estimate Joined(double value, double deviation)
    {
        if (Known is not { } old)
        {
            return new Estimate(value, deviation, TimeSpan.Zero, 1);
        }

        var joint = Math.Sqrt((old.Deviation * old.Deviation) + (deviation * deviation));
        var off = Math.Clamp(value - old.Value, -ClipDeviations * joint, ClipDeviations * joint);
        var share = Math.Max(
            old.Deviation * old.Deviation / (joint * joint), 1.0 / (Math.Min(old.Count, MostSpells) + 1));
        if (Math.Abs(value - old.Value) > ClipDeviations * joint)
        {
            // One odd night changes little; but it makes the old figure less sure, so that a van that has changed is
            // believed in time.
            return new Estimate(old.Value + (share * off), old.Deviation * DoubtRatio, TimeSpan.Zero, old.Count + 1);
        }

        var left = Math.Max(
            Math.Sqrt(1 - share) * old.Deviation, leastShare * Math.Abs(old.Value) / Math.Sqrt(MostSpells));
        return new Estimate(old.Value + (share * off), left, TimeSpan.Zero, old.Count + 1);
    }
}
