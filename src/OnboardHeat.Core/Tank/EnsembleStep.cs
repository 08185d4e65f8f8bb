using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace OnboardHeat.Core.Tank;

/// <summary>
/// Moves all members of an ensemble through time: <see cref="LayeredTank.Pass"/>, draw and mixing, four members at a
/// time, and the probes that lag behind. A test holds it against the single tank.
/// </summary>
internal sealed class EnsembleStep(TankEnsemble ensemble, TankGeometry tank, int bottomLayer)
{
    private const int N = TankGeometry.Layers;
    private const int Wide = TankEnsemble.Members / 4;

    private readonly Vector256<double>[] _upper = new Vector256<double>[N];
    private readonly Vector256<double>[] _layer = new Vector256<double>[N];

    /// <summary>Lets so many seconds pass.</summary>
    /// <param name="stepS">Seconds, over zero, at most some hundreds.</param>
    /// <param name="airCelsius">Air by the tank as read, or a stand-in; the members add their own offset.</param>
    /// <param name="coolantCelsius">Coolant in the coil as its probes show it; null when none passes.</param>
    /// <param name="isElementOn">Whether the electric element heats.</param>
    /// <returns>Mean heat into the water from coil and element over the members, watts.</returns>
    public double Pass(double stepS, double airCelsius, double? coolantCelsius, bool isElementOn)
    {
        var perJ = Vector256.Create(stepS / tank.LayerJPerK);
        var a = perJ * tank.ConductionWPerK;
        var air0 = Vector256.Create(airCelsius);
        var heatW = Vector256<double>.Zero;
        for (var k = 0; k < Wide; k++)
        {
            var air = air0 + At(Row.AirOffset, k);
            var loss = perJ * At(Row.Loss, k);
            var reach = At(Row.CoilReach, k);
            var foot = At(Row.CoilFoot, k) * Tallness(reach);
            var perLayer = Vector256<double>.One / (reach - foot);
            var coolant = coolantCelsius is { } shown
                ? air + (At(Row.CoolantGain, k) * (Vector256.Create(shown) - air)) : air;
            var coilWPerK = coolantCelsius is null ? Vector256<double>.Zero : At(Row.Coil, k) * perLayer;
            var elementW = isElementOn ? At(Row.Element, k) * perLayer : Vector256<double>.Zero;
            heatW += Solve(k, perJ, a, air, loss, coolant, coilWPerK, elementW, foot, reach);
        }

        return (heatW[0] + heatW[1] + heatW[2] + heatW[3]) / TankEnsemble.Members;
    }

    /// <summary>
    /// Lets coolant turn by its own buoyancy for so many seconds: it enters the coil at its foot and takes heat layer
    /// by layer on its way up, by effectiveness-NTU of a tube in still water.
    /// </summary>
    /// <returns>Mean heat it takes out, W.</returns>
    public double Circulate(double stepS, double enteringCelsius)
    {
        var takenJ = 0.0;
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            var carriedWPerK = ensemble[Row.Circulation][m];
            var (foot, reach) = (0.5 * ensemble[Row.CoilFoot][m], ensemble[Row.CoilReach][m]);
            var celsius = enteringCelsius;
            for (var i = 0; i < N && carriedWPerK > 0; i++)
            {
                ref var layer = ref ensemble[Row.Layer + i][m];
                var ntu = ensemble[Row.Coil][m] * TankGeometry.CoilShare(i, foot, reach) / carriedWPerK;
                var gainK = (1 - Math.Exp(-ntu)) * Math.Max(0, layer - celsius);
                celsius += gainK;
                layer -= Math.Min(0.5, stepS * carriedWPerK / tank.LayerJPerK) * gainK;
                takenJ += stepS * carriedWPerK * gainK;
            }
        }

        return takenJ / stepS / TankEnsemble.Members;
    }

    /// <summary>Lets every member draw at its own rate for so many seconds.</summary>
    public void Draw(double stepS, double coldCelsius)
    {
        for (var m = 0; m < TankEnsemble.Members; m++)
        {
            Draw(m, ensemble[Row.Draw][m] * stepS, coldCelsius);
        }
    }

    /// <summary>Lets one member draw so many layers.</summary>
    public void Draw(int member, double drawnLayers, double coldCelsius)
    {
        Span<double> layers = stackalloc double[N];
        ensemble.CopyLayers(member, layers);
        LayeredTank.Draw(layers, drawnLayers, coldCelsius);
        ensemble.SetLayers(member, layers);
    }

    /// <summary>Mixes the members in which a layer is warmer than the one above.</summary>
    public void Mix()
    {
        Span<double> layers = stackalloc double[N];
        for (var k = 0; k < Wide; k++)
        {
            var isUnstable = Vector256<double>.Zero;
            for (var i = 1; i < N; i++)
            {
                isUnstable |= Vector256.GreaterThan(At(Row.Layer + i - 1, k), At(Row.Layer + i, k));
            }

            for (var lane = 0; lane < 4 && isUnstable != Vector256<double>.Zero; lane++)
            {
                if (isUnstable.AsInt64()[lane] == 0)
                {
                    continue;
                }

                var member = (4 * k) + lane;
                ensemble.CopyLayers(member, layers);
                LayeredTank.Mix(layers);
                ensemble.SetLayers(member, layers);
            }
        }
    }

    /// <summary>Lets the probes' metal follow the water.</summary>
    public void Follow(double stepS)
    {
        var step = Vector256.Create(stepS);
        for (var k = 0; k < Wide; k++)
        {
            var middle = 0.5 * (At(Row.Layer + (N / 2) - 1, k) + At(Row.Layer + (N / 2), k));
            FollowOne(0, k, step, At(Row.Layer + N - 1, k));
            FollowOne(1, k, step, middle);
            FollowOne(2, k, step, At(Row.Layer + bottomLayer, k));
        }
    }

    private void FollowOne(int probe, int k, Vector256<double> step, Vector256<double> water)
    {
        ref var metal = ref At(Row.Probe + probe, k);
        metal += step / (step + At(Row.Lag + probe, k)) * (water - metal);
    }

    private Vector256<double> Solve(
        int k, Vector256<double> perJ, Vector256<double> a, Vector256<double> air, Vector256<double> loss,
        Vector256<double> coolant,
        Vector256<double> coilWPerK, Vector256<double> elementW, Vector256<double> foot, Vector256<double> reach)
    {
        var heatW = Vector256<double>.Zero;
        for (var i = 0; i < N; i++)
        {
            var share = InLayer(i, foot, reach);
            var lossHere = loss * TankGeometry.LossShare(i);
            var coilHere = perJ * coilWPerK * share;
            var diagonal = Vector256<double>.One + lossHere + coilHere + (i is 0 or N - 1 ? a : a + a);
            var right = At(Row.Layer + i, k) + (lossHere * air) + (coilHere * coolant) + (perJ * elementW * share);
            if (i > 0)
            {
                diagonal += a * _upper[i - 1];
                right += a * _layer[i - 1];
            }

            _upper[i] = -a / diagonal;
            _layer[i] = right / diagonal;
        }

        for (var i = N - 1; i >= 0; i--)
        {
            _layer[i] -= i < N - 1 ? _upper[i] * _layer[i + 1] : Vector256<double>.Zero;
            At(Row.Layer + i, k) = _layer[i];
            var share = InLayer(i, foot, reach);
            heatW += share * (elementW + (coilWPerK * (coolant - _layer[i])));
        }

        return heatW;
    }

    /// <summary>
    /// A low coil lies on the bottom; one wound over the whole height stands on its lowest turn. 0 for a coil up to the
    /// seventh layer, 1 from the ninth.
    /// </summary>
    private static Vector256<double> Tallness(Vector256<double> reach) => Vector256.Min(
        Vector256.Max((reach - Vector256.Create(7.0)) * 0.5, Vector256<double>.Zero), Vector256<double>.One);

    /// <summary>How much of a layer's height the coil stands in, 0 to 1.</summary>
    private static Vector256<double> InLayer(int layer, Vector256<double> foot, Vector256<double> reach) =>
        Vector256.Max(
        Vector256.Min(reach, Vector256.Create(layer + 1.0)) - Vector256.Max(foot, Vector256.Create((double)layer)),
        Vector256<double>.Zero);

    private ref Vector256<double> At(int row, int k) =>
        ref MemoryMarshal.Cast<double, Vector256<double>>(ensemble[row])[k];
}
