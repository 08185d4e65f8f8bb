using OnboardHeat.Core.Scans;

namespace OnboardHeat.Core.Screening;

/// <summary>
/// The limits of every place. Lags are those of a small steel-cased probe well clamped; a slower one stays within them.
/// </summary>
internal static class Places
{
    private static readonly PlaceLimits[] s_limits =
    [
        // Tank probes sit on metal with water behind: a draw brings cold water past them within seconds, no heater
        // warms them so fast.
        new(-30, 120, RiseK: 20, FallK: 60, LagS: 15, ScreeningPolicy.StaleOtherS),
        new(-30, 120, RiseK: 20, FallK: 60, LagS: 15, ScreeningPolicy.StaleOtherS),
        new(-30, 120, RiseK: 20, FallK: 60, LagS: 15, ScreeningPolicy.StaleOtherS),

        // Coolant lines: the pump may send hot coolant into a cold line and the other way round.
        new(-45, 125, RiseK: 70, FallK: 70, LagS: 10, ScreeningPolicy.StaleLineS),
        new(-45, 125, RiseK: 70, FallK: 70, LagS: 10, ScreeningPolicy.StaleLineS),

        // Air by the tank: a door in winter, hot coolant spouting near by.
        new(-45, 90, RiseK: 60, FallK: 40, LagS: 20, ScreeningPolicy.StaleOtherS),

        // Tray: hot coolant lands on a thin cold sheet. The fastest honest rise of all, and the one never to be missed.
        new(-45, 120, RiseK: 90, FallK: 50, LagS: 8, ScreeningPolicy.StaleLineS),

        // Draw-off pipe: hot or cold water arrives at once.
        new(-45, 110, RiseK: 80, FallK: 80, LagS: 6, ScreeningPolicy.StaleOtherS),

        // Cold supply: a tank or a pipe that stood in the sun.
        new(-30, 70, RiseK: 50, FallK: 50, LagS: 8, ScreeningPolicy.StaleOtherS),

        // The vehicle's own sensor sits in the coolant and comes in whole kelvins; its scale ends at 215 °C.
        new(-45, 150, RiseK: 70, FallK: 70, LagS: 6, ScreeningPolicy.StaleLineS),
    ];

    /// <summary>The limits of one place.</summary>
    public static PlaceLimits Of(Channel channel) => s_limits[(int)channel];
}
