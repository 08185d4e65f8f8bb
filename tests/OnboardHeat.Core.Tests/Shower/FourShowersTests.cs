using System.Runtime.Intrinsics;
using CsCheck;
using OnboardHeat.Core.Shower;
using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Shower;

public sealed class FourShowersTests
{
    private const int N = TankGeometry.Layers;

    private static readonly TankGeometry s_tank = new(new TankDescription { VolumeLitres = 24 });
    private static readonly Gen<double[]> s_layers = Gen.Double[5, 95].Array[N].Select(a => a.Order().ToArray());

    /// <summary>Cold supplies on both sides of the mix: a summer tank counts too.</summary>
    [Fact]
    public void FourAtOnce_AreEachAsAlone() =>
        Gen.Select(s_layers.Array[4], Gen.Double[1, 45], Gen.Double[30, 50]).Sample((four, cold, mix) =>
    {
        var shower = new ShowerDescription { MixedCelsius = mix, FlowLitresPerMinute = 7 };
        var wide = new Vector256<double>[N];
        for (var i = 0; i < N; i++)
        {
            wide[i] = Vector256.Create(four[0][i], four[1][i], four[2][i], four[3][i]);
        }

        var together = FourShowers.Minutes(wide, s_tank, shower, cold);
        for (var lane = 0; lane < 4; lane++)
        {
            var alone = LayeredShower.Minutes(four[lane].ToArray(), s_tank, shower, cold);
            Assert.Equal(alone, together[lane], 1e-9 * Math.Max(1, alone));
        }
    });

    [Fact]
    public void NoDraw_GivesMoreThanPlugFlow() => Gen.Select(s_layers, Gen.Double[1, 30]).Sample((layers, cold) =>
    {
        var shower = new ShowerDescription();
        var most = LayeredShower.MostMinutes(layers, s_tank, shower, cold);
        Assert.InRange(LayeredShower.Minutes(layers.ToArray(), s_tank, shower, cold), 0, most + 1e-9);
    });
}
