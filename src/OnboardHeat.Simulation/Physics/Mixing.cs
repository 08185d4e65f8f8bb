namespace OnboardHeat.Simulation.Physics;

/// <summary>Hot and cold water made one of a wanted temperature.</summary>
internal static class Mixing
{
    /// <summary>
    /// Share of hot water in the mix, 0 to 1: (mix - cold) / (hot - cold). All of it when the hot is no hotter than the
    /// mix.
    /// </summary>
    public static double HotShare(double hotCelsius, double coldCelsius, double mixedCelsius)
    {
        if (coldCelsius >= mixedCelsius)
        {
            return 0;
        }

        return hotCelsius <= mixedCelsius ? 1 : (mixedCelsius - coldCelsius) / (hotCelsius - coldCelsius);
    }
}
