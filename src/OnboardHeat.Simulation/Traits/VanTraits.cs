using OnboardHeat.Core.Scans;

namespace OnboardHeat.Simulation;

/// <summary>Everything that makes one simulated van differ from another, probes included.</summary>
public sealed record VanTraits
{
    /// <summary>The tank.</summary>
    public TankTraits Tank { get; init; } = new();

    /// <summary>The coil in it.</summary>
    public CoilTraits Coil { get; init; } = new();

    /// <summary>Hose from the engine to the tank.</summary>
    public LineTraits FlowLine { get; init; } = new();

    /// <summary>Hose from the tank to the engine.</summary>
    public LineTraits ReturnLine { get; init; } = new();

    /// <summary>Where the flow probe sits.</summary>
    public PipeSpotTraits FlowSpot { get; init; } = new();

    /// <summary>Where the return probe sits.</summary>
    public PipeSpotTraits ReturnSpot { get; init; } = new();

    /// <summary>Engine, thermostat and pump.</summary>
    public EngineTraits Engine { get; init; } = new();

    /// <summary>The space around the tank and the tray under it.</summary>
    public ShelterTraits Shelter { get; init; } = new();

    /// <summary>Share of a line that its sags hold when a joint comes off and it runs out, 0.1 to 1.</summary>
    public double LineHoldsShare { get; init; } = 0.5;

    /// <summary>Coupling of spouting coolant to the bare stub it comes from, W/K.</summary>
    public double SprayOnSpotWPerK { get; init; } = 3;

    /// <summary>Height of the top probe, a share of the tank's height.</summary>
    public double TopProbeHeightShare { get; init; } = 0.88;

    /// <summary>Height of the middle probe.</summary>
    public double MiddleProbeHeightShare { get; init; } = 0.5;

    /// <summary>Height of the bottom probe.</summary>
    public double BottomProbeHeightShare { get; init; } = 0.12;

    /// <summary>Share of engine starts at which the 1-Wire bus is lost for a second.</summary>
    public double CrankLosesBusShare { get; init; } = 0.5;

    /// <summary>Every probe by its channel, in the order of <see cref="Channels.All"/>.</summary>
    public IReadOnlyList<ProbeTraits> Probes { get; init; } = [.. Enumerable.Repeat(ProbeTraits.Plain, Channels.Count)];

    /// <summary>What is fitted.</summary>
    public FittedSet Fitted { get; init; } = Kits.Full;

    /// <summary>A van made from a seed: every property within what is found in real vans, each on its own.</summary>
    public static VanTraits Random(int seed) => VanMaker.Make((ulong)seed);

    /// <summary>
    /// The touring van of the demo: high roof, 24-litre tank, an ordinary installation; only its probes' small errors
    /// come from the seed.
    /// </summary>
    public static VanTraits Touring(int seed) => new() { Probes = VanMaker.Make((ulong)seed).Probes };

    /// <summary>The same van with other things fitted.</summary>
    public VanTraits With(FittedSet fitted) => this with { Fitted = fitted };
}
