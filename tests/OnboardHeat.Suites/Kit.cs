using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tank;
using OnboardHeat.Simulation;

namespace OnboardHeat.Suites;

/// <summary>
/// A set of probes under its name: what a daemon with fewer probes would have seen of the same drive.
/// </summary>
internal sealed record Kit(string Name, FittedSet Fitted)
{
    /// <summary>Names of the signs of the circuit, for trials without one of them.</summary>
    public static IReadOnlyList<string> Signs { get; } = [.. new LossTest().Signs.Select(s => s.Name)];

    /// <summary>A sign taken away; null for the whole.</summary>
    public string? Muted { get; init; }

    /// <summary>The same kit, once for each sign taken away.</summary>
    public IEnumerable<Kit> Without() =>
        Signs.Select(sign => this with { Name = $"{Name} without {sign}", Muted = sign });

    public static IReadOnlyList<Kit> All { get; } =
    [
        new("full", Kits.Full), new("no-tray", Kits.NoTray), new("lines", Kits.Lines),
        new("engine-unknown", Kits.EngineUnknown),
        new("one-tank-probe", Kits.OneTankProbe),
    ];

    /// <summary>The van as its owner would describe it, with this kit.</summary>
    public VanDescription Describe(VanTraits van, IReadOnlyList<CircuitPart>? parts = null) => new()
    {
        Fitted = Fitted,
        Tank = new TankDescription
        {
            VolumeLitres = Math.Round(van.Tank.VolumeLitres), ColdSupplyCelsius = Math.Round(van.Tank.ColdCelsius, 1),
        },
        Circuit = new CircuitDescription { Parts = parts ?? [] },
    };

    /// <summary>Copies into <paramref name="to"/> what this kit would have read.</summary>
    public void Look(Scan from, Scan to)
    {
        to.Clear();
        to.Run = from.Run;
        to.Elapsed = from.Elapsed;
        to.Utc = from.Utc;
        to.IsUtcTrusted = from.IsUtcTrusted;
        to.Actions = from.Actions;
        foreach (var channel in Channels.All)
        {
            if (Fitted.Has(channel))
            {
                to[channel] = from[channel];
            }
        }

        foreach (var signal in Signals.All)
        {
            if (Fitted.Has(signal))
            {
                to[signal] = from[signal];
            }
        }
    }
}
