using OnboardHeat.Core.Scans;
using OnboardHeat.Daemon.Probing;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Running;

/// <summary>
/// The bus of a running daemon, for whoever asks over the control socket. Fitted probes are told from a scan that is
/// made at once: reading them beside it would make each measure twice. Only strangers are read here.
/// </summary>
internal sealed class DaemonBus(RunningVan van, WiredVan wires, BusSurvey survey, StateSaver saver)
{
    /// <summary>One look.</summary>
    public async Task<BusSight> LookAsync(CancellationToken cancellationToken)
    {
        var next = van.Latest.WaitForAsync(static _ => true, cancellationToken);
        van.Wake.CallForScan();
        var roms = await survey.ListAsync(cancellationToken).ConfigureAwait(false);
        var strangers = (roms ?? []).Except(van.Options.Probes.Select(probe => probe.Rom)).ToList();
        var read = await survey.ReadAsync(strangers, cancellationToken).ConfigureAwait(false);
        var scan = (await next.ConfigureAwait(false)).Scan;
        var kept = saver.Newest.Probes;
        var seen = roms?.Select(
            rom => read.FirstOrDefault(probe => probe.Rom == rom) ?? new SeenProbe(rom, Raw(scan, rom, kept)));
        return BusSight.Of(van.Options, kept, seen?.ToList());
    }

    /// <summary>
    /// Learns an offset: kept, in force from the next scan on, and noted in the record. Why not, or null.
    /// </summary>
    public string? Learn(string channel, double offsetKelvin, string reference)
    {
        if (van.Options.Probes.FirstOrDefault(probe => probe.Channel == channel) is not { } options
            || !Channels.TryParse(channel, out var place))
        {
            return $"no probe is configured at {channel}";
        }

        if (!(Math.Abs(offsetKelvin) <= PairCheck.MostK))
        {
            return FormattableString.Invariant($"an offset is {PairCheck.MostK:0} K at most");
        }

        saver.Change(content => content with { Probes = Fittings.Learn(content.Probes, channel, offsetKelvin) });
        wires.SetOffset(place, options.OffsetKelvin + offsetKelvin);
        var note = FormattableString.Invariant(
            $"pair check: {channel} {offsetKelvin:+0.000;-0.000;0.000} K to read as {reference}");
        van.Inbox.Offer(new PersonAction(ActionKind.Note, "", note));
        return null;
    }

    private Reading Raw(Scan scan, string rom, IReadOnlyList<KeptProbe> kept)
    {
        var probe = van.Options.Probes.First(fitted => fitted.Rom == rom);
        var reading = Channels.TryParse(probe.Channel, out var channel) ? scan[channel] : Reading.None;
        return reading.HasValue
            ? Reading.Of(reading.Value - probe.OffsetKelvin - Fittings.LearntOffset(kept, probe))
            : reading;
    }
}
