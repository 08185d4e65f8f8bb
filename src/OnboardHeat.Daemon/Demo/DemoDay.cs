using OnboardHeat.Core;
using OnboardHeat.Core.Circuit;
using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Tank;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>
/// The demo's van and day: two people tour mountain passes in late spring. The hose to the tank was fitted by hand and
/// is rated 70 °C, far too little for engine coolant.
/// </summary>
internal static class DemoDay
{
    /// <summary>The hose that was fitted by hand, and what it may bear.</summary>
    public const string HoseId = "tank-hose";

    /// <inheritdoc cref="HoseId"/>
    public const double HoseMaxCelsius = 70;

    private static readonly FittedSet s_fitted = new(
        [Channel.TankTop, Channel.TankBottom, Channel.Flow, Channel.Return, Channel.Surroundings, Channel.Tray],
        [Signal.EngineRunning]);

    /// <summary>The van as its owners would describe it in their configuration.</summary>
    public static VanDescription Description { get; } = new()
    {
        Fitted = s_fitted,
        Tank = new TankDescription { VolumeLitres = 24, ColdSupplyCelsius = 12 },
        Circuit = new CircuitDescription
        {
            Parts = [new CircuitPart(HoseId, "hose to the tank, fitted by hand", Channel.Flow, HoseMaxCelsius)],
        },
    };

    /// <summary>The van in the morning.</summary>
    public static SimulatedVan Begin(int seed) =>
        new(VanTraits.Touring(seed).With(s_fitted), DrivePlans.MountainDay(), seed);
}
