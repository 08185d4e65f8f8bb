namespace OnboardHeat.Core.Tank;

/// <summary>
/// What happens to one profile of layer temperatures: standing, heating, buoyant mixing, a draw. Pure functions on
/// twelve doubles; heat is conserved to rounding, and every temperature stays between the coldest and hottest of what
/// meets.
/// </summary>
internal static class LayeredTank
{
    private const int N = TankGeometry.Layers;

    /// <summary>
    /// Lets time pass: loss to the surroundings, conduction between layers, heat from coil and element. Implicit in
    /// time, so that a step of any length is stable. Does not mix.
    /// </summary>
    /// <returns>Heat that went into the tank from coil and element, joules; losses not subtracted.</returns>
    public static double Pass(Span<double> celsius, TankGeometry tank, in TankSurrounds around, double stepS)
    {
        Span<double> upper = stackalloc double[N];
        var perJ = stepS / tank.LayerJPerK;
        var a = perJ * tank.ConductionWPerK;
        for (var i = 0; i < N; i++)
        {
            var loss = perJ * around.LossWPerK * TankGeometry.LossShare(i);
            var coil = perJ * around.CoilWPerK * TankGeometry.CoilShare(
                i, around.CoilFootLayers, around.CoilReachLayers);
            var element = perJ * around.ElementW * TankGeometry.CoilShare(
                i, around.CoilFootLayers, around.CoilReachLayers);
            var diagonal = 1 + loss + coil + (i is 0 or N - 1 ? a : 2 * a);
            var right = celsius[i] + (loss * around.AirCelsius) + (coil * around.CoolantCelsius) + element;
            if (i > 0)
            {
                diagonal += a * upper[i - 1];
                right += a * celsius[i - 1];
            }

            upper[i] = -a / diagonal;
            celsius[i] = right / diagonal;
        }

        for (var i = N - 2; i >= 0; i--)
        {
            celsius[i] -= upper[i] * celsius[i + 1];
        }

        var heatedJ = around.ElementW * stepS;
        for (var i = 0; i < N; i++)
        {
            heatedJ += stepS * around.CoilWPerK * TankGeometry.CoilShare(
                i, around.CoilFootLayers, around.CoilReachLayers) * (around.CoolantCelsius - celsius[i]);
        }

        return heatedJ;
    }

    /// <summary>
    /// Buoyant mixing: a layer warmer than the one above mixes with it until none is (pool adjacent violators: the
    /// nearest stable profile, same heat).
    /// </summary>
    public static void Mix(Span<double> celsius)
    {
        Span<double> mean = stackalloc double[N];
        Span<int> count = stackalloc int[N];
        var pools = 0;
        for (var i = 0; i < N; i++)
        {
            mean[pools] = celsius[i];
            count[pools] = 1;
            while (pools > 0 && mean[pools - 1] > mean[pools])
            {
                var both = count[pools - 1] + count[pools];
                mean[pools - 1] = ((mean[pools - 1] * count[pools - 1]) + (mean[pools] * count[pools])) / both;
                count[pools - 1] = both;
                pools--;
            }

            pools++;
        }

        for (int pool = 0, at = 0; pool < pools; at += count[pool], pool++)
        {
            celsius.Slice(at, count[pool]).Fill(mean[pool]);
        }
    }

    /// <summary>
    /// Draws from the top while cold water enters below and is stirred into the lowest layers. The vessel gives no heat
    /// back within a draw: it goes out with the water, so that minutes of shower err low, by a few per cent at most.
    /// </summary>
    /// <param name="celsius">Profile, bottom first.</param>
    /// <param name="layers">Water drawn, in layers: litres over the litres of one layer; zero or more.</param>
    /// <param name="coldCelsius">Water that enters.</param>
    /// <param name="largestStep">Longest single step in layers, over 0 to 0.5.</param>
    /// <returns>Mean temperature of what was drawn, degrees Celsius; of nothing drawn, the top.</returns>
    public static double Draw(Span<double> celsius, double layers, double coldCelsius, double largestStep = 0.5)
    {
        if (layers <= 0)
        {
            return celsius[N - 1];
        }

        var steps = Math.Max(1, (int)Math.Ceiling(layers / largestStep));
        var share = layers / steps;
        var drawn = 0.0;
        for (var s = 0; s < steps; s++)
        {
            drawn += DrawStep(celsius, share, coldCelsius);
        }

        return drawn / steps;
    }

    /// <summary>
    /// One step of a draw, of at most half a layer: vessels in series to the second order in the step, so that the
    /// front smears alike whatever the step. Every layer becomes a mean of what was there, with no negative weights.
    /// </summary>
    /// <returns>Mean temperature of what left at the top, degrees Celsius.</returns>
    public static double DrawStep(Span<double> celsius, double share, double coldCelsius)
    {
        const int Stirred = TankGeometry.StirredLayers;
        var stirred = 0.0;
        for (var i = 0; i < Stirred; i++)
        {
            stirred += celsius[i] / Stirred;
        }

        celsius[..Stirred].Fill(stirred);
        var half = Math.Max(0, share * (share - TankGeometry.Unsmeared)) / 2;
        var leaving = celsius[N - 1] + (half / share * (celsius[N - 2] - celsius[N - 1]));
        for (var i = N - 1; i > Stirred; i--)
        {
            var rise = celsius[i - 1] - celsius[i];
            celsius[i] += (share * rise) + (half * (celsius[i - 2] - celsius[i - 1] - rise));
        }

        var enters = (coldCelsius - stirred) / Stirred;
        var above = stirred - celsius[Stirred];
        celsius[Stirred] += (share * above) + (half * (enters - above));
        celsius[..Stirred].Fill(stirred + (share * enters) - (half * enters / Stirred));
        return leaving;
    }

    /// <summary>Mean temperature, degrees Celsius.</summary>
    public static double Mean(ReadOnlySpan<double> celsius)
    {
        var sum = 0.0;
        foreach (var layer in celsius)
        {
            sum += layer;
        }

        return sum / celsius.Length;
    }
}
