using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Engine.Pictures;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Probing;

/// <summary>One look at the bus: what hangs on it and what the configuration expects there.</summary>
/// <param name="HasAnswered">Whether the bus gave its list in time.</param>
/// <param name="Probes">Those on the bus first, then those that are missed.</param>
internal sealed record BusSight(bool HasAnswered, IReadOnlyList<ProbeSight> Probes)
{
    /// <summary>Puts together what was seen and what was configured.</summary>
    /// <param name="options">The configuration.</param>
    /// <param name="kept">What was learnt of each probe.</param>
    /// <param name="seen">What hangs on the bus, read without offsets; null when it did not answer.</param>
    public static BusSight Of(OnboardHeatOptions options, IReadOnlyList<KeptProbe> kept, IReadOnlyList<SeenProbe>? seen)
    {
        var there = seen ?? [];
        var missed = options.Probes.Select(probe => probe.Rom).Distinct().Except(there.Select(probe => probe.Rom))
            .Select(rom => new SeenProbe(rom, Reading.None));
        return new BusSight(
            seen is not null, [.. there.Select(
                probe => SightOf(probe, true)), .. missed.Select(probe => SightOf(probe, false))]);

        ProbeSight SightOf(SeenProbe probe, bool isOnBus)
        {
            var roles = options.Probes.Where(role => role.Rom == probe.Rom).ToList();
            var owner = roles.Count > 0 ? roles[0].OffsetKelvin : 0;
            var learnt = roles.Count > 0 ? Fittings.LearntOffset(kept, roles[0]) : 0;
            return new ProbeSight(
                probe.Rom, [.. roles.Select(role => role.Channel)], isOnBus,
                probe.Reading.HasValue
                    ? probe.Reading.Value + owner + learnt
                    : null, PublicNames.Of(probe.Reading.Fault) ?? "", owner, learnt);
        }
    }

    /// <summary>The probe at a place; null when the configuration has none there.</summary>
    public ProbeSight? At(string channel) => Probes.FirstOrDefault(probe => probe.Channels.Contains(channel));
}
