using OnboardHeat.Core.Tank;

namespace OnboardHeat.Core.Tests.Tank;

public sealed class NaturalCirculationTests
{
    [Theory]
    [InlineData(0.5, 3.0, false)]
    [InlineData(0.5, 9.0, true)]
    [InlineData(12.0, 13.0, false)]
    public void BottomThatFallsFarFasterThanTheTop_IsCirculation(double topKPerH, double bottomKPerH, bool isFound)
    {
        var circulation = new NaturalCirculation();
        for (var s = 0; s < 3600; s += 20)
        {
            circulation.Observe(true, 60 - (topKPerH * s / 3600), 58 - (bottomKPerH * s / 3600), 20);
        }

        Assert.Equal(isFound, circulation.IsFound);
    }

    [Theory]
    [InlineData(38, 20, true)]
    [InlineData(24, 20, false)]
    [InlineData(38, 36, false)]
    public void WarmLineBesideAColdBottom_IsCirculation(double flow, double back, bool isFound)
    {
        var circulation = new NaturalCirculation();
        for (var s = 0; s < 3600; s += 20)
        {
            circulation.Observe(true, 50, 25, 20);
            circulation.ObserveLines(flow, back, 25, 18, 20);
        }

        Assert.Equal(isFound, circulation.IsFound);
    }

    [Fact]
    public void HeatOrADraw_EndsIt()
    {
        var circulation = new NaturalCirculation();
        for (var s = 0; s < 3600; s += 20)
        {
            circulation.Observe(true, 60, 58 - (s / 200.0), 20);
        }

        Assert.True(circulation.IsFound);
        circulation.Observe(false, 60, 40, 20);
        Assert.False(circulation.IsFound);
    }

    /// <summary>
    /// Effectiveness-NTU with a capacity ratio of nought: Q = C (1 - e^-NTU) (T_tank - T_in) with NTU = UA/C, however
    /// the coil is spread over water of one temperature (Incropera, Fundamentals of Heat and Mass Transfer, ch. 11;
    /// from memory).
    /// </summary>
    [Theory]
    [InlineData(2, 45)]
    [InlineData(20, 45)]
    [InlineData(20, 10)]
    public void Coil_TakesWhatEffectivenessNtuSays(double carriedWPerK, double coilWPerK)
    {
        var tank = new TankGeometry(new TankDescription { VolumeLitres = 24 });
        var ensemble = new TankEnsemble();
        for (var layer = 0; layer < TankGeometry.Layers; layer++)
        {
            ensemble[Row.Layer + layer].Fill(60);
        }

        ensemble[Row.Circulation].Fill(carriedWPerK);
        ensemble[Row.Coil].Fill(coilWPerK);
        ensemble[Row.CoilFoot].Fill(0);
        ensemble[Row.CoilReach].Fill(8);
        var takenW = new EnsembleStep(ensemble, tank, 0).Circulate(1, 15);
        Assert.Equal(carriedWPerK * (1 - Math.Exp(-coilWPerK / carriedWPerK)) * 45, takenW, 0.01 * takenW);
    }
}
