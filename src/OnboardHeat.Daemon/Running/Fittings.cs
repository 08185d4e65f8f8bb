using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes.Contacts;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// Probes and contacts as the owner states them, with what was learnt of each probe that is still the same.
/// </summary>
internal static class Fittings
{
    /// <summary>The probes with the owner's offset and the learnt one added.</summary>
    public static IReadOnlyList<ProbeFitting> ProbesOf(OnboardHeatOptions options, IReadOnlyList<KeptProbe> kept) =>
    [
        .. options.Probes.Select(probe => new ProbeFitting(
            ChannelOf(probe.Channel), probe.Rom, probe.OffsetKelvin + LearntOffset(kept, probe))),
    ];

    /// <summary>The contacts.</summary>
    public static IReadOnlyList<ContactFitting> ContactsOf(OnboardHeatOptions options) =>
    [
        .. options.Signals.Select(signal => new ContactFitting(
            Signals.TryParse(signal.Signal, out var named) ? named : default, signal.Pin, signal.ActiveLow)),
    ];

    /// <summary>
    /// What is to be kept of the probes from now on: a probe that is not the one that was there begins anew.
    /// </summary>
    public static IReadOnlyList<KeptProbe> Keep(OnboardHeatOptions options, IReadOnlyList<KeptProbe> kept) =>
        [.. options.Probes.Select(probe => Find(kept, probe) ?? new KeptProbe(probe.Channel, probe.Rom, 0))];

    /// <summary>The same with another learnt offset for one place.</summary>
    public static IReadOnlyList<KeptProbe> Learn(IReadOnlyList<KeptProbe> kept, string channel, double offsetKelvin) =>
        [.. kept.Select(probe => probe.Channel == channel ? probe with { OffsetKelvin = offsetKelvin } : probe)];

    /// <summary>
    /// A change mark for each channel on which another probe sits than before. The history stays with the channel.
    /// </summary>
    public static IEnumerable<PersonAction> ChangeMarks(OnboardHeatOptions options, IReadOnlyList<KeptProbe> kept)
    {
        foreach (var probe in options.Probes)
        {
            if (kept.FirstOrDefault(k => k.Channel == probe.Channel) is { } before && before.Rom != probe.Rom)
            {
                yield return new PersonAction(
                    ActionKind.Changed, $"probe/{probe.Channel}", $"{probe.Rom} in place of {before.Rom}");
            }
        }
    }

    /// <summary>
    /// What a pair check learnt of this very probe at this place, signed kelvin; zero where there was none.
    /// </summary>
    public static double LearntOffset(IReadOnlyList<KeptProbe> kept, ProbeOptions probe) =>
        Find(kept, probe)?.OffsetKelvin ?? 0;

    private static KeptProbe? Find(IReadOnlyList<KeptProbe> kept, ProbeOptions probe) =>
        kept.FirstOrDefault(k => k.Channel == probe.Channel && k.Rom == probe.Rom);

    private static Channel ChannelOf(string name) => Channels.TryParse(name, out var channel) ? channel : default;
}
