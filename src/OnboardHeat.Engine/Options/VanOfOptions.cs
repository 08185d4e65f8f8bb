using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Engine.Options;

/// <summary>The van that the core judges, from what its owner stated.</summary>
public static class VanOfOptions
{
    /// <summary>The probes and signals that the configuration names.</summary>
    public static FittedSet Fitted(this OnboardHeatOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return new FittedSet(
            options.Probes.Select(p => ChannelOf(p.Channel)),
            options.Signals.Select(
                s => Core.Scans.Signals.TryParse(s.Signal, out var signal) ? signal : throw NotChecked(s.Signal)));
    }

    /// <summary>
    /// The van's description with the given probes and signals: those of the configuration, or the columns of a
    /// recording.
    /// </summary>
    public static VanDescription Describe(this OnboardHeatOptions options, FittedSet fitted)
    {
        ArgumentNullException.ThrowIfNull(options);
        return new VanDescription
        {
            Fitted = fitted,
            HasLampOrBuzzer = options.Outputs.LampPin is not null || options.Outputs.BuzzerPin is not null,
            Tank = new TankDescription
            {
                VolumeLitres = options.Tank.VolumeLitres,
                ColdSupplyCelsius = options.Tank.ColdSupplyCelsius,
                VesselMassKg = options.Tank.VesselMassKg,
                ReliefCelsius = options.Tank.ReliefCelsius,
            },
            Shower = new ShowerDescription
            {
                MixedCelsius = options.Shower.MixedCelsius,
                FlowLitresPerMinute = options.Shower.FlowLitresPerMinute,
                UsefulMinutes = options.Shower.UsefulMinutes,
                UsableTopCelsius = options.Shower.UsableTopCelsius,
            },
            Circuit = new CircuitDescription
            {
                CoolantMaxCelsius = options.Circuit.CoolantMaxCelsius,
                Parts =
                [
                    .. options.Circuit.Parts.Select(p =>
                        new CircuitPart(p.Id, p.Name.Length > 0 ? p.Name : p.Id, ChannelOf(p.On), p.MaxCelsius)),
                ],
            },
        };
    }

    private static Channel ChannelOf(string name) =>
        Channels.TryParse(name, out var channel) ? channel : throw NotChecked(name);

    private static InvalidOperationException NotChecked(string name) =>
        new($"'{name}' was not checked when the configuration was read.");
}
