using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Shower;

/// <summary>
/// One profile of layers under surroundings that stay as they are but for the air, step after step: the same physics as
/// <see cref="LayeredTank.Pass"/>, by the trapezoidal rule. Of second order in time, it takes steps of minutes where
/// that takes seconds, and its elimination is done once for all steps.
/// </summary>
internal sealed class SteadyCourse
{
    private const int N = TankGeometry.Layers;

    private readonly double _neighbour;
    private readonly double[] _stays = new double[N];
    private readonly double[] _fromAir = new double[N];
    private readonly double[] _heat = new double[N];
    private readonly double[] _inverse = new double[N];

    /// <summary>A course through steps of equal length.</summary>
    /// <param name="tank">The tank's geometry.</param>
    /// <param name="around">What acts on it; its air is given to each step instead.</param>
    /// <param name="longestStepS">Longest step, s; fast tanks take shorter ones.</param>
    public SteadyCourse(TankGeometry tank, in TankSurrounds around, double longestStepS)
    {
        Span<double> perS = stackalloc double[N];
        var fastestPerS = 0.0;
        for (var i = 0; i < N; i++)
        {
            var share = TankGeometry.CoilShare(i, around.CoilFootLayers, around.CoilReachLayers);
            var loss = around.LossWPerK * TankGeometry.LossShare(i) / tank.LayerJPerK;
            var coil = around.CoilWPerK * share / tank.LayerJPerK;
            perS[i] = loss + coil + ((i is 0 or N - 1 ? 1 : 2) * tank.ConductionWPerK / tank.LayerJPerK);
            fastestPerS = Math.Max(fastestPerS, perS[i]);
            _fromAir[i] = loss;
            _heat[i] = (coil * around.CoolantCelsius) + (around.ElementW * share / tank.LayerJPerK);
        }

        // No longer than twice the fastest layer's own time: a longer step could swing past its surroundings.
        StepS = Math.Min(longestStepS, 2 / fastestPerS);
        _neighbour = 0.5 * StepS * tank.ConductionWPerK / tank.LayerJPerK;
        for (var i = 0; i < N; i++)
        {
            _fromAir[i] *= StepS;
            _heat[i] *= StepS;
            _stays[i] = 1 - (0.5 * StepS * perS[i]);
            var diagonal = 1 + (0.5 * StepS * perS[i]) - (i > 0 ? _neighbour * _neighbour * _inverse[i - 1] : 0);
            _inverse[i] = 1 / diagonal;
        }
    }

    /// <summary>Length of every step, s.</summary>
    public double StepS { get; }

    /// <summary>Lets one step pass, then mixes what has become unstable.</summary>
    /// <param name="celsius">The layers, bottom first.</param>
    /// <param name="airCelsius">Air by the tank in the middle of the step, °C.</param>
    public void Step(Span<double> celsius, double airCelsius)
    {
        Span<double> next = stackalloc double[N];
        for (var i = 0; i < N; i++)
        {
            var around = (i > 0 ? celsius[i - 1] : 0) + (i < N - 1 ? celsius[i + 1] : 0);
            next[i] = (_stays[i] * celsius[i]) + (_neighbour * around) + (_fromAir[i] * airCelsius) + _heat[i];
        }

        next[0] *= _inverse[0];
        for (var i = 1; i < N; i++)
        {
            next[i] = (next[i] + (_neighbour * next[i - 1])) * _inverse[i];
        }

        celsius[N - 1] = next[N - 1];
        for (var i = N - 2; i >= 0; i--)
        {
            celsius[i] = next[i] + (_neighbour * _inverse[i] * celsius[i + 1]);
        }

        MixIfUnstable(celsius);
    }

    private static void MixIfUnstable(Span<double> celsius)
    {
        for (var i = 1; i < N; i++)
        {
            if (celsius[i - 1] > celsius[i])
            {
                LayeredTank.Mix(celsius);
                return;
            }
        }
    }
}
