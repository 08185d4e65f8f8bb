using OnboardHeat.Engine.Options;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Running;

/// <summary>The words of the first log line: which probes were found, and where the daemon publishes.</summary>
internal static class StartLine
{
    /// <summary>How many of the fitted probes hang on the bus, and which do not.</summary>
    public static string Probes(OnboardHeatOptions options, IReadOnlyList<string>? onBus)
    {
        if (onBus is null)
        {
            return "the 1-Wire bus does not answer";
        }

        var missing = options.Probes.Where(probe => !onBus.Contains(probe.Rom))
            .Select(probe => $"{probe.Channel} {probe.Rom}").ToList();
        var found = $"{options.Probes.Count - missing.Count} of {options.Probes.Count} probes found";
        return missing.Count == 0 ? found : $"{found}, missing {string.Join(", ", missing)}";
    }

    /// <summary>Where pictures go beside the record.</summary>
    public static string Destination(OnboardHeatOptions options) => options.Messaging switch
    {
        { EmbeddedBroker: true } => $"its own broker on 127.0.0.1:{options.Messaging.Port}",
        { Host: { } host } => $"{host}:{options.Messaging.Port}",
        _ => "no broker",
    };
}
